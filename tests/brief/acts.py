# SPDX-License-Identifier: MIT
"""Sheets that ask for every act, one to a row: its name, the act looked for, the sheet.

Invented instruments; only what a row changes matters to it.
"""
import copy

STEEL = {
    "sillet": 1, "profile": "steel-string-acoustic",
    "instrument": {"rod": "two-way", "rod_state": "works", "crown": 1.1, "head_angle": "14 deg"},
    "nut": {"seat_to_board": 6.0}, "saddle": {"slot_depth": 5},
    "readings": [{"relief": 0.20, "first": [0.06, 0.06, 0.07, 0.08, 0.09, 0.10],
                  "action": [1.75, 1.85, 1.95, 2.05, 2.15, 2.25], "frets": "sound",
                  "saddle_height": {"treble": 9.0, "bass": 10.2}}]}
ELECTRIC = {
    "sillet": 1, "profile": "electric-guitar",
    "instrument": {"rod": "two-way", "rod_state": "works", "crown": 1.1},
    "readings": [{"relief": 0.20, "first": [0.05, 0.05, 0.06, 0.07, 0.08, 0.09],
                  "action": [1.50, 1.58, 1.66, 1.74, 1.82, 1.90], "frets": "sound"}]}
ARCHTOP = {
    "sillet": 1, "profile": "archtop", "instrument": {"rod": "two-way", "crown": 1.1},
    "readings": [{"relief": 0.20, "first": [0.06, 0.06, 0.07, 0.08, 0.09, 0.10],
                  "action": [2.6, 2.7, 2.8, 2.9, 3.0, 3.1], "frets": "sound"}]}


def sheet(base, **changes):
    """A copy with the last reading's keys changed; a key with a dot is of the sheet; None drops."""
    doc = copy.deepcopy(base)
    for key, value in changes.items():
        path = key.split("__") if "__" in key else ["readings", -1, key]
        at = doc
        for part in path[:-1]:
            at = at[part] if isinstance(part, int) or part in at else at.setdefault(part, {})
        if value is None:
            at.pop(path[-1], None)
        else:
            at[path[-1]] = value
    return doc


def twice(before, now):
    """The readings of both visits, on the later sheet."""
    return {**now, "readings": before["readings"] + now["readings"]}


HIGH = [2.35, 2.45, 2.6, 2.7, 2.85, 2.95]
LOW = [1.4, 1.5, 1.6, 1.7, 1.8, 1.9]
LEVEL = [1.75, 1.85, 1.95, 2.05, 2.15, 2.25]   # at the targets of an archtop
TAPERED = [2.0, 2.2, 2.4, 2.6, 2.8, 3.0]
PICKY = {"tools": {"action": 0.4}}

BARE = {key: None for key in ("first", "action", "saddle_height")}
NEW_NUT = {**sheet(STEEL, **BARE), "make": "nut"}
FANNED_NUT = {**sheet(STEEL, **BARE, relief=None,
                      instrument__scale={"treble": 635, "bass": 665, "square": 7}),
              "make": "nut", "files": [0.33, 0.41, 0.6]}
NO_HEIGHT = {**sheet(STEEL, **BARE), "make": "saddle"}
NEW_SADDLE = {**sheet(STEEL, **BARE, bridge_top={"treble": 1.4, "bass": 1.2}), "make": "saddle"}
COPIES = {**sheet(STEEL, **BARE, saddle__old=[8.1, 8.4, 8.7, 8.8, 8.7, 8.6],
                  nut__floors=[7.0, 7.3, 7.5, 7.6, 7.5, 7.2],
                  nut__centres=[39.7, 33, 26, 19, 11.5, 3.9], condition={"tuned": "no"}),
          "make": ["nut", "saddle"]}

ROWS = [
    ("ready", "prepare", sheet(STEEL)),
    ("old strings", "prepare", sheet(STEEL, condition={"strings": "worn"})),
    ("too dry", "stop", sheet(STEEL, humidity="20 %")),
    ("bridge lifting", "stop", sheet(STEEL, condition={"bridge": "lifted", "tuned": "no"})),
    ("no relief", "measure-relief", sheet(STEEL, relief=None)),
    ("relief of nothing", "straightedge", sheet(STEEL, relief=0)),
    ("nobody looked", "look-at-frets",
     sheet(STEEL, frets=None, first=[0.2, 0.2, 0.2, 0.2, 0.2, 0.2])),
    ("saddle's fit not looked at", "look-at-saddle", sheet(STEEL, action=HIGH)),
    ("relief for the saddle's room", "rod",
     sheet(STEEL, relief=0.29, action=[2.2, 2.28, 2.36, 2.44, 2.52, 2.6],
           saddle_height={"treble": 7.2, "bass": 7.2})),
    ("moved by the season", "check",
     twice(sheet(STEEL, date="2026-01-10", humidity="42 %"),
           sheet(STEEL, date="2026-07-12", humidity="61 %", relief=0.28,
                 action=[round(a + 0.45, 2) for a in STEEL["readings"][0]["action"]]))),
    ("saddle leans", "fit-saddle", sheet(STEEL, action=HIGH, condition={"saddle": "loose"})),
    ("no gaps of two", "measure-first", sheet(STEEL, first=[0.06, "~", 0, 0.08, "~", 0.10])),
    ("no action of one", "measure-action", sheet(STEEL, action=[1.75, 1.85, "~", 2.05, 2.15, 2.25])),
    ("two gaps apart", "measure-gaps-again",
     sheet(STEEL, first_open=[0.9, "~", "~", 0.9, "~", "~"])),
    ("a saddle that moved", "measure-saddle",
     {**sheet(STEEL), "readings": [
         sheet(STEEL, humidity="25 %", action=list(HIGH))["readings"][0],
         sheet(STEEL, action=list(HIGH), saddle_height={"treble": 9.0, "bass": 9.2})["readings"][0]]}),
    ("one action off the line", "measure-odd",
     sheet(STEEL, action=[1.75, 1.85, 1.95, 3.05, 2.15, 2.25])),
    ("gaps that stand out", "measure-odd",
     sheet(STEEL, first=[0.06, 0.6, 0.07, 0.08, 0.7, 0.10])),
    ("a worn spot too deep to believe", "measure-odd",
     sheet(STEEL, frets=[{"string": 2, "fret": 9, "off": 0.42}],
           action=[2.0, 2.1, 2.2, 2.3, 2.4, 2.5])),
    ("no fret height", "measure-fret-height",
     sheet(STEEL, instrument__crown=None, first=[0.2, 0.2, 0.2, 0.2, 0.2, 0.2])),
    ("saddle not measured", "measure-saddle",
     sheet(STEEL, action=HIGH, saddle_height=None)),
    ("rod not looked for", "find-rod", sheet(STEEL, relief=0.6, instrument__rod=None,
                                             instrument__rod_state=None)),
    ("wide by ear", "rod-by-ear", sheet(STEEL, relief="wide")),
    ("bowed for good", "neck-bow", sheet(STEEL, relief=1.2, instrument__rod="none",
                                         instrument__rod_state=None)),
    ("too much bow", "rod", sheet(STEEL, relief=0.45)),
    ("too straight", "rod", sheet(STEEL, relief=0.03)),
    ("too much bow again", "measure-again", sheet(STEEL, relief=0.45)),
    ("proud frets", "seat-frets", sheet(STEEL, frets=[{"string": 2, "fret": 5, "off": 0.13},
                                                      {"string": 4, "fret": 9, "off": 0.21}])),
    ("worn frets", "level-frets", sheet(STEEL, frets=[{"string": 2, "fret": 1, "off": -0.13},
                                                      {"string": 3, "fret": 2, "off": -0.08}])),
    ("worn out frets", "new-frets", sheet(STEEL, frets=[{"string": 2, "fret": 1, "off": -0.3}], instrument__crown=0.8)),
    ("high slots", "file-slots", sheet(STEEL, first=[0.20, 0.22, 0.07, 0.25, 0.09, 0.30])),
    ("high slots, shop files", "file-slots",
     {**sheet(STEEL, first=[0.20, 0.22, 0.07, 0.25, 0.09, 0.30]), "files": [0.33, 0.41, 0.6]}),
    ("high slots, filed once and once not", "file-slots",
     twice(sheet(STEEL, first=[0.25, 0.15, 0.07, 0.08, 0.09, 0.10]),
           sheet(STEEL, first=[0.13, 0.15, 0.07, 0.08, 0.09, 0.10]))),
    ("slots a little high", "file-slots",
     {**sheet(STEEL, first=[0.12, 0.13, 0.07, 0.15, 0.09, 0.17]), "tools": {"first": 0.05}}),
    ("one low slot", "fill-slot", sheet(STEEL, first=[0.06, 0.06, 0.01, 0.08, 0.09, 0.10])),
    ("one string on its fret", "fill-slot", sheet(STEEL, first=[0.06, 0.06, 0, 0.2, 0.09, 0.10])),
    ("two strings on their fret", "fill-slot", sheet(STEEL, first=[0.06, 0, 0, 0.2, 0.09, "~"])),
    ("three strings on their fret", "new-nut", sheet(STEEL, first=[0, 0, 0, 0.08, 0.09, 0.10])),
    ("on its fret, and nobody looked", "measure-first",
     sheet(STEEL, first=[0.06, 0, 0.07, 0.08, 0.09, 0.10], frets=None)),
    ("two low slots", "shim-nut", sheet(STEEL, first=[0.06, 0.02, 0.01, 0.08, 0.09, 0.20])),
    ("a very low nut", "new-nut",
     {**sheet(STEEL, first=[0.01, 0.01, 0.01, 0.01, 0.01, 0.01]), "limits": {"most_shim": 0.02}}),
    ("high saddle", "sand-saddle", sheet(STEEL, action=HIGH)),
    ("high in the bass", "sand-saddle", sheet(STEEL, action=TAPERED)),
    ("high, unread saddle", "measure-saddle", sheet(STEEL, action=HIGH, saddle_height=None)),
    ("high, a saddle read two ways", "measure-saddle",
     sheet(STEEL, action=HIGH, stands_out={"treble": 4.0, "bass": 3.5})),
    ("glued, unread saddle", "measure-saddle",
     sheet(STEEL, action=HIGH, saddle_height=None, saddle__kind="glued")),
    ("high, a ruler at the bridge", "sand-saddle",
     sheet(STEEL, action=HIGH, saddle_height=None, stands_out={"treble": 4.0, "bass": 5.2})),
    ("no room for the target", "sand-saddle",
     sheet(STEEL, action=[2.15, 2.25, 2.35, 2.45, 2.55, 2.65],
           saddle_height={"treble": 7.4, "bass": 7.8})),
    ("high at two strings of the bass", "sand-saddle",
     sheet(STEEL, action=[1.75, 1.85, 1.95, 2.05, 2.65, 2.85])),
    ("high at two strings of the treble", "sand-saddle",
     sheet(STEEL, action=[2.4, 2.3, 1.95, 2.05, 2.15, 2.25])),
    ("high, a coarse ruler", "sand-saddle", {**sheet(STEEL, action=HIGH), "tools": {"action": 0.25}}),
    ("high, too coarse a ruler", "sand-saddle", {**sheet(STEEL, action=HIGH), **PICKY}),
    ("one high string", "sand-saddle",
     sheet(STEEL, action=[1.75, 1.85, 1.95, 2.05, 2.15, 2.95])),
    ("a fan, high at both ends", "sand-saddle",
     sheet(STEEL, action=HIGH, first=[0.20, 0.22, 0.07, 0.25, 0.09, 0.30],
           instrument__scale={"treble": 635, "bass": 665, "square": 7})),
    ("a fan, the other way", "file-slots",
     sheet(STEEL, first=[0.20, 0.22, 0.07, 0.25, 0.09, 0.30],
           instrument__scale={"treble": 640, "bass": 660, "square": 0})),
    ("curve too tall", "dress-saddle",
     sheet(STEEL, action=[2.25, 2.35, 2.9, 2.55, 2.65, 2.75])),
    ("one high string", "dress-saddle",
     sheet(STEEL, action=[1.75, 1.85, 1.95, 2.45, 2.15, 2.25])),
    ("one high string, too coarse a ruler", "dress-saddle",
     {**sheet(STEEL, action=[1.75, 1.85, 1.95, 2.55, 2.15, 2.25]), "tools": {"action": 0.42}}),
    ("low, but one string", "dress-saddle", sheet(STEEL, action=[1.4, 1.5, 1.6, 2.05, 1.8, 1.9])),
    ("glued and high", "dress-saddle", sheet(STEEL, action=HIGH, saddle__kind="glued")),
    ("low saddle", "shim-saddle", sheet(STEEL, action=LOW)),
    ("very low saddle", "new-saddle", sheet(STEEL, action=[0.8, 0.9, 1.0, 1.1, 1.2, 1.3])),
    ("one worn notch", "new-saddle",
     sheet(STEEL, action=[1.75, 1.85, 1.0, 2.05, 2.15, 2.25], confirmed=[3])),
    ("glued and low", "new-saddle", sheet(STEEL, action=LOW, saddle__kind="glued")),
    ("height screws", "turn-screws",
     sheet(ELECTRIC, action=[2.1, 1.58, 1.0, 1.74, 2.4, 1.2])),
    ("height screws, others in range", "turn-screws",
     sheet(ELECTRIC, action=[1.50, 1.40, 1.66, 1.35, 2.05, 1.90])),
    ("height screws, far too high", "turn-screws",
     sheet(ELECTRIC, action=[4.4] * 6, confirmed=[1, 2, 3, 4, 5, 6])),
    ("two posts", "turn-posts",
     sheet(ELECTRIC, action=[2.1, 2.1, 2.1, 2.1, 2.1, 2.1], saddle__kind="two-post",
           saddle__post_spread=74, saddle__pitch=0.7)),
    ("two posts, low in the bass", "turn-posts",
     sheet(ELECTRIC, action=[2.0, 1.9, 1.8, 1.5, 1.3, 1.2], saddle__kind="two-post",
           saddle__post_spread=74, saddle__pitch=0.7)),
    ("two posts, wrong curve", "bridge-curve",
     sheet(ELECTRIC, action=[1.5, 1.6, 2.6, 2.6, 1.2, 1.2], saddle__kind="two-post",
           saddle__post_spread=74, saddle__pitch=0.7)),
    ("thumbwheels", "turn-posts", sheet(ARCHTOP, action=[3.6, 3.7, 3.8, 3.9, 4.0, 4.1],
                                        saddle__pitch=0.7, saddle__post_spread=70)),
    ("zero fret too high", "zero-fret",
     sheet(STEEL, nut__kind="zero-fret", first=[0.3, 0.3, 0.07, 0.3, 0.09, 0.1])),
    ("neck at a wrong angle", "neck-angle",
     sheet(STEEL, action=[3.9, 4.0, 4.1, 4.2, 4.3, 4.4], saddle_height={"treble": 6.5, "bass": 7.0})),
    ("straight but for its bow", "neck-angle",
     sheet(STEEL, action=[2.3, 2.4, 2.5, 2.6, 2.7, 2.8], relief=0.42, instrument__rod="none",
           instrument__rod_state=None, saddle_height={"treble": 7.3, "bass": 7.9})),
    ("a bow and a wrong angle", "neck-angle",
     sheet(STEEL, action=[3.9, 4.0, 4.1, 4.2, 4.3, 4.4], relief=0.42, instrument__rod="none",
           instrument__rod_state=None, saddle_height={"treble": 6.5, "bass": 7.0})),
    ("thumbwheels at their end", "neck-angle",
     sheet(ARCHTOP, action=[3.6, 3.7, 3.8, 3.9, 4.0, 4.1], saddle__pitch=0.7,
           saddle__post_spread=70, saddle__travel=0.5)),
    ("screws at their end", "neck-shim",
     sheet(ELECTRIC, action=[2.9, 3.0, 3.1, 3.2, 3.3, 3.4], saddle__travel=0.5,
           instrument__pocket=70)),
    ("screws at their end, with a way up", "neck-shim",
     sheet(ELECTRIC, action=[2.9, 3.0, 3.1, 3.2, 3.3, 3.4],
           saddle__travel={"down": 0.5, "up": 3.5}, instrument__pocket=70)),
    ("bolt-on at a wrong angle", "neck-shim",
     sheet(STEEL, action=[3.9, 4.0, 4.1, 4.2, 4.3, 4.4], saddle_height={"treble": 6.5, "bass": 7.0},
           instrument__pocket=70)),
    ("heel at a wrong angle", "neck-reset",
     sheet(STEEL, action=[3.9, 4.0, 4.1, 4.2, 4.3, 4.4], saddle_height={"treble": 6.5, "bass": 7.0},
           instrument__heel=90)),
    ("strings out of tune, on screws", "tune-screws",
     sheet(ELECTRIC, cents=[4, -9, 12, 3, 5.5, -1])),
    ("one string out of tune, on two posts", "tune-screws",
     sheet(ELECTRIC, cents=["~", -9, "~", "~", "~", "~"], saddle__kind="two-post",
           saddle__post_spread=74, saddle__pitch=0.7)),
    ("a floating bridge off its place", "tune-ends",
     sheet(ARCHTOP, action=LEVEL, cents=[9, 8.5, 8, 7, -7, -8])),
    ("a floating bridge too near the nut", "tune-ends",
     sheet(ARCHTOP, action=LEVEL, cents=[11] * 6)),
    ("peaks, while there is height for them", "file-peaks",
     sheet(STEEL, action=HIGH, cents=[8, 3, 9, -7, 1, 12], targets__cents=5)),
    ("peaks of a glued saddle", "file-peaks",
     sheet(STEEL, cents=[3, 3, 2, -7, 1, 2], targets__cents=5, saddle__kind="glued")),
    ("peaks of a new saddle", "file-peaks",
     sheet(STEEL, action=[0.8, 0.9, 1.0, 1.1, 1.2, 1.3], cents=[3, 3, 2, -9, 1, 2])),
    ("peaks of a new saddle, by physics", "file-peaks",
     sheet(STEEL, action=[0.8, 0.9, 1.0, 1.1, 1.2, 1.3], cents=["~", "~", "~", -9, 1, 2],
           saddle__setback=[1.0, 2.5, 2.6, 3.0, 3.4, 4.0])),
    ("peaks, and the height is gone", "tuned-saddle",
     sheet(STEEL, cents=[8, 3, 9, -7, 1, 12], targets__cents=5)),
    ("a nut from a blank", "fit-nut-blank", NEW_NUT),
    ("a nut on a fan", "mark-nut", FANNED_NUT),
    ("a nut, no fret height", "cut-nut-slots",
     {**sheet(STEEL, **BARE, instrument__crown=None), "make": "nut"}),
    ("a nut, shop files", "cut-nut-slots", FANNED_NUT),
    ("a nut that is copied", "shape-nut", COPIES),
    ("a nut read back", "file-slots",
     twice(NEW_NUT, {**sheet(STEEL, first=[0.09, 0.10, 0.12, 0.11, 0.11, 0.13]), "make": "nut"})),
    ("a saddle, its slot not measured", "measure-bridge", NO_HEIGHT),
    ("a saddle by the bridge's top", "fit-saddle-blank", NEW_SADDLE),
    ("a saddle by the old one", "shape-saddle", {**sheet(STEEL, action=LOW), "make": "saddle"}),
    ("a saddle that is copied", "shape-saddle", COPIES),
    ("measured with it in", "measure-new-part", NEW_SADDLE),
    ("peaks of a saddle from a blank", "file-peaks",
     {**sheet(STEEL, **BARE, bridge_top={"treble": 1.4, "bass": 1.2},
              saddle__setback=[1.0, 2.5, 2.6, 3.0, 3.4, 4.0]), "make": "saddle"}),
    ("a new saddle in a high bridge", "shape-saddle",
     {**sheet(STEEL, **BARE, bridge_top={"treble": 0.05, "bass": -0.7}), "make": "saddle"}),
    ("a new saddle, picked firmly", "shape-saddle",
     {**NEW_SADDLE, "attack": {"force": {"treble": "0.9 N", "bass": "1.2 N"}, "at": 130}}),
    ("a new nut, picked too firmly", "choose-attack",
     {**NEW_NUT, "attack": {"force": {"treble": "2.4 N", "bass": "5 N"}, "at": 200}}),
    ("low, under a firm pick", "choose-attack",
     {**sheet(STEEL, action=HIGH), "attack": {"force": {"treble": "1.6 N", "bass": "2.6 N"}, "at": 110}}),
    ("as low as it is clean", "sand-saddle",
     {**sheet(STEEL, action=HIGH), "attack": "medium"}),
    ("a slot that would buzz", "choose-attack",
     {**sheet(STEEL, first=[0.20, 0.22, 0.07, 0.25, 0.09, 0.30]), "attack":
      {"force": {"treble": "2.4 N", "bass": "5 N"}, "at": 200}}),
    ("all well", "check", sheet(STEEL)),
    ("more to do", "check", sheet(STEEL, action=HIGH)),
]
