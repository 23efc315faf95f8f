# SPDX-License-Identifier: MIT
"""What a person is shown of nut and saddle, string by string, worked out from the result and the
sheet: which figures, rounded which way, or a dash. Texts and papers are held against it."""
import math

from shown import DOWN, NEAREST, UP, eighths, shown, unknown

LEAST_PASS = 0.005  # mm: less is no pass that a person could take
LEAST_FILED = 0.01  # mm: less is not filed
FEEL = 0.1  # mm: less is not asked off the top


def left_to_file(nut, row):
    """How much stays on at a slot after today's filing; None where nothing is filed or cut."""
    if row["leave"] is not None:   # cut from above
        return row["leave"]
    if row["filed_back"]:   # as far as it has to come down with the shim in, less what is filed of it now
        return row["goal"] + nut["shim"] - row["filed_back"]
    files = row["verdict"] == "file" and nut["remedy"] != "replace"
    return row["goal"] - row["first_pass"] if files else None


class Shown:
    """A result with what its sheet says, in one unit."""

    def __init__(self, job, doc, result, unit):
        self.job, self.result, self.unit = job, result, unit
        self.nut, self.saddle = result["nut"], result["saddle"]
        self.stages = {stage["stage"]: stage for stage in result["stages"]}
        self.count = len(result["strings"])
        self.kind = doc["saddle"]["kind"]
        if self.kind == "floating":
            self.kind = "wheels" if "pitch" in doc["saddle"] else "feet"
        self.cut_to_height = self.kind in ("slotted", "glued", "feet")

    def length(self, value, way=NEAREST):
        return shown(value, way, self.unit)

    def first_now(self, i):
        return self.nut["strings"][i]["now"]

    def first_at(self, stage, i):
        held = {0: "first_open", 2: "first_held2", 3: "first_held3"}[self.job.targets.held]
        return self.stages[stage]["strings"][i][held]

    def files_again(self):
        """Whether some of the slots that are filed keep something on after their first pass."""
        return self.nut["remedy"] == "file" and any(
            (left_to_file(self.nut, row) or 0.0) >= LEAST_PASS for row in self.nut["strings"])

    def first_passed(self, i):
        """The gap at fret 1 after the first pass: as far from the one before it as the pass is of the cut."""
        row, before, after = self.nut["strings"][i], self.first_at("frets", i), self.first_at("nut", i)
        share = row["first_pass"] / row["goal"] if row["verdict"] == "file" else 0.0
        return before if unknown(after) or unknown(before) else before + (after - before) * share

    def first_after(self, i):
        return self.first_at("saddle", i)

    # -- the nut

    def nut_shim(self):
        """What lies under the nut: heights on paper are from the nut's own bottom."""
        return self.nut["shim"] if self.nut["remedy"] == "shim" else 0.0

    def slot(self, i):
        """What is done at a slot, and its figures."""
        row, remedy = self.nut["strings"][i], self.nut["remedy"]
        shim, verdict, own, back = self.nut_shim(), row["verdict"], row["goal"], row["filed_back"]
        takes = (verdict == "file" and remedy != "replace") or bool(back)
        does = {"file": "deeper", "raise": "fill", "leave": "leave", "wait": "wait"}[verdict]
        does = "new" if remedy == "replace" else does
        does = ("deeper" if back else "leave") if back is not None else does
        first = None if not takes else back or row["first_pass"] + shim
        left = left_to_file(self.nut, row)
        whole = first if takes and left < LEAST_PASS else None if own is None else own + shim
        stack_first = "-" if None in (left, row["stack"]) else self.length(row["stack"] + left, UP)
        stack = self.length(row["stack"], UP)
        worked = does in ("deeper", "fill", "new")
        return {
            "does": does, "off": self.length(row["deepen"]),
            "sure": None if unknown(row["deepen_u"]) else self.length(2 * row["deepen_u"]),
            "deepen": self.length(whole, DOWN) if does == "deeper" else "-",
            "first": self.length(first, DOWN),
            "stack_first": stack_first, "stack": stack,
            "stack_now": "-" if not worked else stack if stack_first == "-" else stack_first,
            "floor": self.length(
                None if row["floor"] is None else row["floor"] - self.nut_shim(), UP),
            "depth": self.length(row["depth"]), "width": self.length(row["width"]),
            "gauge": self.length(self.job.strings[i].gauge), "along": self.length(self.slot_at(i))}

    def slot_at(self, i):
        """Its centre from the bass end, along a nut that may lean."""
        return self.nut["strings"][i]["centre"] / math.cos(math.radians(self.nut["slant"]))

    # -- the saddle

    def base_at(self, cut, i):
        """What a line along the saddle takes off under a string."""
        share = self.result["strings"][i]["saddle_z"] / self.job.saddle.length + 0.5
        return cut["bass"] + (cut["treble"] - cut["bass"]) * share

    def one_pass(self):
        cut = self.saddle["bottom_cut"]
        return all(cut[end] - cut["first_pass"][end] < LEAST_PASS for end in ("treble", "bass"))

    def base(self, i):
        """Off the bottom in the first pass, and in all."""
        cut = self.saddle["bottom_cut"]
        if cut is None:
            return "-", "-"
        first = self.length(self.base_at(cut["first_pass"], i), DOWN)
        if max(cut["first_pass"].values()) < 0.01 <= max(cut["treble"], cut["bass"]):
            first = "-"   # something is to come off, and nothing of it today
        return first, first if self.one_pass() else self.length(self.base_at(cut, i), DOWN)

    def left_on(self, i):
        """Too little for a file to feel: it stays on."""
        dress = self.saddle["strings"][i]["dress"]
        return 0.0 if self.saddle["remedy"] == "replace" or unknown(dress) or self.filed(i) \
            else dress

    def filed(self, i):
        """More than a file can feel, or all there is to come off a string that is too high."""
        row = self.saddle["strings"][i]
        alone = row["verdict"] == "lower" and not self.saddle["bottom_cut"]
        return not unknown(row["dress"]) and (row["dress"] >= FEEL or alone and row["dress"] > 0)

    def notch(self, i):
        """The figure of a notch of a bridge on two posts that is worked once the bridge has its height, or None."""
        figures = next((step["figures"] for step in self.result["steps"] if step["act"] == "bridge-curve"), [])
        return next((one for one in figures if one["of"] == "curve" and one["string"] == i + 1), None)

    def curved(self, i):
        return self.notch(i) is not None

    def action_curved(self, i):
        """The action when that is done: at its target where the notch is worked."""
        return self.length(self.job.targets.action[i][1]) if self.curved(i) else self.bearing(i)["action_done"]

    def action_turned(self, i):
        """As posts leave it, before the notches; for any other saddle when all is done."""
        return self.stages["saddle"]["strings"][i]["action"] if self.curved(i) else \
            self.saddle["strings"][i]["asked"]["action"]

    def curve_off(self, i):
        """How much deeper a notch gets, or by how much it is filled."""
        notch = self.notch(i)
        if notch is None:
            return "-"
        down = notch["way"] == "down"
        return ("" if down else "fill ") + self.length(notch["value"], DOWN if down else NEAREST)

    def dresses_later(self):
        """Whether the bottom has passes to come before the top."""
        cut = self.saddle["bottom_cut"]
        return cut is not None and max(cut["treble"], cut["bass"]) >= LEAST_FILED and not self.one_pass()

    def dress_now(self, i):
        """Off the top in this visit."""
        now = self.saddle["strings"][i]["dress_first"] or 0.0
        return None if self.dresses_later() or not now >= LEAST_FILED else now

    def bearing(self, i):
        """What is done to the saddle under a string, and its figures."""
        row, remedy = self.saddle["strings"][i], self.saddle["remedy"]
        does = {"lower": "lower", "raise": "raise", "leave": "leave",
                "wait": "wait"}[row["verdict"]]
        first, whole = self.base(i)
        dress = 0.0 if unknown(row["dress"]) or remedy == "replace" else row["dress"]
        way, moves, turns = self.move(i)
        on = self.left_on(i)
        taken = self.taken(i)
        cuts = not unknown(taken) and taken > 0 and self.cut_to_height
        height = None if unknown(row["height"]) else row["height"] + on
        made = UP if remedy == "replace" else NEAREST   # a new one is filed down to there
        return {
            "does": "new" if remedy == "replace" else does, "off": self.length(row["lower"]),
            "sure": None if unknown(row["lower_u"]) else self.length(2 * row["lower_u"]),
            "by": "-" if unknown(taken) or does == "leave" and abs(taken) < LEAST_PASS else
            self.length(abs(taken), DOWN if cuts else NEAREST),
            "pass": self.length(row["first_pass"] if row["verdict"] == "lower" else None, DOWN),
            "base_first": first, "base_all": whole,
            "dress": self.length(dress, DOWN) if dress and self.filed(i) else "-",
            "dress_now": self.length(self.dress_now(i), DOWN) if dress and self.filed(i) else "-",
            "present": self.length(row["present"]), "height": self.length(height, made),
            "height_first": "-" if unknown(row["leave"]) or height is None else
            self.length(row["height"] + row["leave"], UP),
            "out": "-" if unknown(row["protrusion"]) else self.length(row["protrusion"] + on, made),
            "way": way, "moves": moves, "turns": turns,
            "action_done": self.length(self.action_turned(i)),
            "action_made": "-" if unknown(row["leave"]) or unknown(row["asked"]["action"]) else self.length(
                row["asked"]["action"] + row["leave"] * self.result["strings"][i]["leverage"]),
            "action_before": self.length(self.stages["nut"]["strings"][i]["action"])}

    def taken(self, i):
        """How far a string really comes down: the stages' heights, less what stays on the top."""
        before, after = (self.stages[stage]["strings"][i]["saddle_height"] for stage in ("nut", "saddle"))
        waits = self.saddle["strings"][i]["verdict"] == "wait"
        return None if waits or unknown(before) or unknown(after) else before - after - self.left_on(i)

    def move(self, i):
        """Which way its screws turn it, how far, and how often."""
        row = self.saddle["strings"][i]
        before, after = (self.stages[stage]["strings"][i]["saddle_height"]
                         for stage in ("nut", "saddle"))
        down = None if row["verdict"] == "wait" or unknown(before) or unknown(after) \
            else before - after
        if unknown(down) or down == 0:
            return "-", "-", "-"
        turns = "-" if unknown(row["turns"]) else eighths(row["turns"])
        return "down" if down > 0 else "up", self.length(abs(down)), turns

    def caliper(self, end):
        """Bottom to string at an outer string when the first pass is done."""
        i = 0 if end == "treble" else self.count - 1
        present = self.saddle["strings"][i]["present"]
        if unknown(present) or self.saddle["bottom_cut"] is None:
            return "-"
        return self.length(present - self.base_at(self.saddle["bottom_cut"]["first_pass"], i), UP)

    # -- blanks

    def blank(self, part):
        sizes = self.result[part]["blank"]
        if sizes is None or any(unknown(sizes[key]) for key in ("length", "thickness", "height")):
            return None
        return [self.length(sizes[key], UP) for key in ("length", "thickness", "height")]
