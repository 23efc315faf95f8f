# SPDX-License-Identifier: MIT
"""Random targets for an instrument, limits of the shop, and how the instrument is played."""
import sheet


def ends(m, aims, half, digits):
    """One mapping, or a plain aim that takes the shop's own band."""
    def one(aim):
        if m.chance(0.25):
            return m.length(aim, digits)
        low = max(0.002, aim - half * m.between(0.5, 1.2))
        return {"low": m.length(low, digits), "aim": m.length(aim, digits),
                "high": m.length(aim + half * m.between(0.5, 1.5), digits)}
    form = m.rng.choice(["pair", "pair", "one", "list"])
    if form == "pair":
        return {"treble": one(aims[0]), "bass": one(aims[-1])}
    return one(aims[0]) if form == "one" else [one(a) for a in aims]


def targets(m, count, frets):
    action = sheet.run(m.between(1.3, 2.4), m.between(1.6, 3.0), count)
    first = sheet.run(m.between(0.06, 0.14), m.between(0.08, 0.18), count)
    helds = [h for h in (3, 3, 2) if h <= frets] + ["open"]
    held = m.rng.choice(helds)
    if held == "open":
        first = [f + 0.25 for f in first]
    aims = ends(m, first, 0.04, 3)
    if isinstance(aims, dict) and ("treble" in aims or "low" in aims):
        aims = {**aims, **({} if held == 3 and m.chance(0.3) else {"held": held})}
    elif held != 3:
        low = first[0] - m.between(0.02, 0.05)
        aims = {"low": m.length(low, 3), "aim": m.length(first[0], 3),
                "high": m.length(first[0] + m.between(0.02, 0.06), 3), "held": held}
    aim = m.between(0.1, 0.25)
    relief = {"low": m.length(aim - m.between(0.04, 0.09)), "aim": m.length(aim),
              "high": m.length(aim + m.between(0.04, 0.12))}
    return {"relief": m.rng.choice([relief, relief, m.length(aim)]),
            "action": ends(m, action, m.between(0.1, 0.3), 2), "first": aims}


def shop(m):
    tight = m.rng.choice([0.3, 1, 1, 3])
    leave = {"slot": m.length(m.between(0, 0.1), 3), "base": m.length(m.between(0, 0.3)),
             "top": m.length(m.between(0, 0.2))}
    return {
        "tools": {"action": m.length(tight * m.between(0.03, 0.15)),
                  "first": m.length(max(0.004, tight * m.between(0.01, 0.03)), 3),
                  "relief": m.length(max(0.01, tight * m.between(0.01, 0.04)), 3),
                  "caliper": m.length(m.rng.choice([0.02, 0.05, 0.1, 0.2])),
                  **({"ruler": m.length(m.between(0.1, 0.5))} if m.chance(0.8) else {})},
        "limits": {"wear": m.length(m.between(0.05, 0.1)),
                   "least_crown": m.length(m.between(0.5, 0.7)),
                   "least_protrusion": m.length(m.between(1.0, 3.0)),
                   **({"good_protrusion": m.length(m.between(3.0, 4.5))} if m.chance(0.8) else {}),
                   "most_protrusion": m.length(6.0), "least_in_slot": 0.5, "least_break": f"{m.rng.randint(5, 20)} deg",
                   "most_shim": m.length(m.between(0.3, 1.0)), "most_relief": m.length(0.5),
                   "least_first": m.length(0.04),
                   "humidity": {"low": f"{m.rng.randint(30, 40)} %",
                                "high": f"{m.rng.randint(55, 65)} %"}},
        "allowances": {**({"leave": leave} if m.chance(0.9) else {}),
                       "slot_plain": m.length(m.between(0.02, 0.06)),
                       "slot_wound": m.length(m.between(0.05, 0.1)),
                       "bury_plain": round(m.between(0.6, 1.2), 2),
                       "bury_wound": round(m.between(0.3, 0.7), 2),
                       "fall_share": round(m.between(0.3, 0.7), 2),
                       "shim_step": m.length(m.rng.choice([0.05, 0.1, 0.2])),
                       "band": {"relief": m.length(m.between(0.04, 0.1)),
                                "action": m.length(m.between(0.1, 0.25)),
                                "first": m.length(m.between(0.02, 0.05), 3)},
                       "blank": {"length": m.length(m.between(0.5, 2), 1),
                                 "thickness": m.length(m.between(0.1, 0.4)),
                                 "height": m.length(m.between(1, 2), 1)}}}


def playing(m, count, scale):
    """How it is plucked and how its pitch is told."""
    forces = [m.between(0.08, 0.9) * (1 + i / count) for i in range(count)]
    said = [f"{round(f, 3)} N" for f in forces]
    pluck = {"force": m.rng.choice([said, said[0], {"treble": said[0], "bass": said[-1]}]),
             "at": m.length(scale * m.between(0.05, 0.4), 1)}
    node = {"attack": pluck}
    if m.chance(0.1):
        said = m.rng.choice(["firm", "firm", "any"])
        named = "medium" if said == "any" else said
        node = {"attack": said, "attacks": {"light": {"force": "0.4 N", "at": 1}, named: pluck}}
    if m.chance(0.9):
        node["model"] = {"ends": m.rng.choice(["clamped-pinned", "pinned", "clamped"]),
                         "press": m.rng.choice([0, m.length(scale * m.between(0.001, 0.014))])}
        if m.chance(0.1):
            node["model"].popitem()
    return node
