// SPDX-License-Identifier: MIT
// What is asked for, in the order it is taken at the bench. A * stands for the reading that counts. One table for the
// fields, the figures beside them and the remarks in a saved sheet.
//
// kind   one: a value; choice: one of a few words; each: a value a string, ends: strings 1 and last, band: low, aim and
//        high, in whatever shape the sheet has them; rows: as many as there are
// usual  of a choice: what it is where nothing is said
// note   the remark in the sheet, and the hint under the field

const yes = (no) => [["", "not looked at"], ...no];

export const sections = [
  {id: "before", title: "Before you measure", figure: "before",
   lead: "Good strings at pitch, the instrument in playing position.",
   fields: [
     {path: "readings.*.date", kind: "one", label: "Date", note: "year-month-day", narrow: true},
     {path: "readings.*.humidity", kind: "one", label: "Humidity", figure: "room", note: "of the room, such as 47 %", narrow: true},
     {path: "readings.*.condition.bridge", kind: "choice", label: "Bridge", figure: "bridge",
      words: yes([["sound", "flat down"], ["lifted", "lifting"]])},
     {path: "readings.*.condition.braces", kind: "choice", label: "Braces",
      words: yes([["sound", "sound"], ["loose", "one is loose"]])},
     {path: "readings.*.condition.strings", kind: "choice", label: "Strings",
      words: yes([["new", "good"], ["worn", "worn"]])},
     {path: "readings.*.condition.tuned", kind: "choice", label: "At pitch",
      words: yes([["yes", "yes"], ["no", "no"]])},
     {path: "readings.*.condition", note: "looked at before anything was read"},
   ]},
  {id: "relief", title: "Relief", figure: "relief",
   lead: "Hold an outer string down on fret 1 and at the body joint. It is a straightedge: read the gap in the middle.",
   fields: [
     {path: "readings.*.relief.gap", kind: "one", label: "Gap", figure: "relief", narrow: true,
      hint: "a feeler; or none, ping or wide by ear"},
     {path: "readings.*.relief.at", kind: "one", label: "Over fret", figure: "relief", hint: "7 unless another"},
     {path: "readings.*.relief.by", kind: "choice", label: "Read against", figure: "relief",
      words: [["string", "a string"], ["straightedge", "a straightedge"]], usual: "string"},
     {path: "readings.*.relief", note: "gap under a string held on fret 1 and at the body joint"},
   ]},
  {id: "crowns", title: "Frets", figure: "crowns",
   lead: "Look along each crown under the strings: worn spots, flats, one standing proud.",
   fields: [
     {path: "readings.*.frets", kind: "crowns", label: "Crowns", figure: "crowns",
      note: "sound: looked at, none worn or high; - a worn spot, + standing proud"},
   ]},
  {id: "first", title: "Gap at the 1st fret", figure: "first",
   lead: "Press the string behind fret 3 so that it lies on that fret, and read the gap over fret 1. This judges the nut.",
   fields: [
     {path: "readings.*.first", kind: "each", label: "Gap over fret 1", figure: "first",
      hint: "a feeler; or none, ping or wide by ear", note: "gap over fret 1, string 1 first"},
     {path: "readings.*.first_held", kind: "choice", label: "The string lies on", figure: "first",
      words: [["3", "fret 3"], ["2", "fret 2"], ["open", "no fret: open"]], usual: "3", note: "3, 2 or open: where it lay while it was read"},
     {path: "readings.*.first_open", kind: "each", label: "Gap over fret 1, open", figure: "open",
      hint: "only where a held string lies on fret 1 and gives no figure", note: "the same, open; it decides"},
   ]},
  {id: "action", title: "Action", figure: "action",
   lead: "Open, over fret 12: from the top of the fret to the underside of the string.",
   fields: [
     {path: "readings.*.action", kind: "each", label: "Gap over fret 12", figure: "action",
      note: "open, over fret 12, string 1 first"},
     {path: "readings.*.action_at", kind: "one", label: "Read over fret", figure: "action", hint: "12 unless another"},
     {path: "readings.*.action_capo", kind: "choice", label: "Read with", figure: "action",
      words: [["0", "the string open"], ["1", "a capo at fret 1"]], usual: "0"},
   ]},
  {id: "saddle-read", title: "At the saddle", figure: "height",
   lead: "Caliper, from the bottom of the saddle to the underside of the outer strings.",
   fields: [
     {path: "readings.*.saddle_height", kind: "ends", label: "Saddle height", figure: "height",
      note: "caliper, saddle out: bottom to string, at the outer strings"},
     {path: "readings.*.stands_out", kind: "ends", label: "Saddle stands out", figure: "stands",
      note: "or by ruler: top of the bridge to the underside of the string"},
     {path: "readings.*.bridge_top", kind: "ends", label: "Straightedge down to the bridge", figure: "bridge",
      hint: "the edge on the frets, gap to the bridge's top", note: "straightedge on the frets, gap to the bridge's top"},
   ]},
  {id: "sound", title: "What you hear", figure: "buzz",
   lead: "Notes that buzz, and how far the octave at fret 12 is off.",
   fields: [
     {path: "readings.*.buzz", kind: "rows", label: "Buzzes", figure: "buzz", note: "heard; fret 0 is the open string",
      row: [["string", "String"], ["fret", "Fret, 0 is open"]], add: "Add a note that buzzes"},
     {path: "readings.*.cents", kind: "each", label: "Cents at fret 12", figure: "cents",
      hint: "sharp is +, against the open string's octave", note: "sharp (+) at fret 12 against the open string's octave"},
   ]},
  {id: "instrument", title: "The instrument", figure: "scale", folded: true,
   lead: "Pale figures are typical of this kind. Put in what differs on this one.",
   fields: [
     {path: "instrument.scale", kind: "scale", label: "Scale", figure: "scale", note: "nut to saddle, without compensation"},
     {path: "instrument.frets", kind: "one", label: "Frets", figure: "scale", note: "how many"},
     {path: "instrument.join", kind: "one", label: "Body joint at fret", figure: "scale", note: "fret at the body joint"},
     {path: "instrument.radius", kind: "radius", label: "Board radius", figure: "radius", note: "of the board; or flat", hint: "or: flat"},
     {path: "instrument.crown", kind: "one", label: "Fret height", figure: "crown", note: "of a sound fret over the board"},
     {path: "instrument.rod", kind: "choice", label: "Truss rod",
      words: [["", "not known"], ["none", "none"], ["one-way", "one-way"], ["two-way", "two-way"]], note: "none, one-way or two-way"},
     {path: "instrument.rod_state", kind: "choice", label: "Rod's state",
      words: [["", "not tried"], ["works", "works"], ["slack", "not engaging"], ["at-end", "end of travel"], ["stuck", "stuck"], ["accepted", "neck left as it is"]], note: "works, slack, at-end, stuck or accepted"},
     {path: "instrument.head_angle", kind: "one", label: "Headstock angle", note: "such as 14 deg", hint: "such as 14 deg"},
     {path: "instrument.fallaway", kind: "one", label: "Fall-away", figure: "scale", note: "of the board over the body, at the last fret"},
     {path: "instrument.handed", kind: "choice", label: "Plays", words: [["right", "right-handed"], ["left", "left-handed"]], usual: "right", note: "right or left"},
   ]},
  {id: "strings", title: "Strings", figure: "gauge", folded: true, lead: "String 1 is on the treble side.",
   fields: [
     {path: "strings", kind: "table", label: "Strings", figure: "gauge", note: "string 1 first",
      row: [["note", "Note"], ["gauge", "Gauge"], ["make", "Make"], ["core", "Core"], ["course", "Course"]]},
   ]},
  {id: "nut", title: "Nut", figure: "seat", folded: true,
   fields: [
     {path: "nut.kind", kind: "choice", label: "Kind", figure: "seat",
      words: [["slotted", "slotted"], ["zero-fret", "zero fret"]], usual: "slotted", note: "slotted or zero-fret"},
     {path: "nut.width", kind: "one", label: "Board width at the nut", figure: "width", note: "of the board"},
     {path: "nut.thickness", kind: "one", label: "Thickness", figure: "seat", note: "along the strings"},
     {path: "nut.seat_to_board", kind: "one", label: "Nut floor to board", figure: "seat", hint: "floor of the nut's slot in the neck to the board's surface",
      note: "floor of the nut's slot in the neck to the board's surface, centre line"},
     {path: "nut.edge", kind: "ends", label: "Board edge to outer strings", figure: "width", note: "board edge to the outer strings' outer edges"},
     {path: "nut.spacing", kind: "choice", label: "Spacing",
      words: [["equal-gap", "equal gaps"], ["equal-centre", "equal centres"]], usual: "equal-gap", note: "equal-gap or equal-centre"},
     {path: "nut.material", kind: "one", label: "Material"},
   ]},
  {id: "saddle", title: "Saddle", figure: "saddle", folded: true,
   fields: [
     {path: "saddle.kind", kind: "choice", label: "Kind", figure: "saddle",
      words: [["", "not known"], ["slotted", "in a slot"], ["glued", "glued in"], ["individual", "a height screw for each string"], ["two-post", "on two posts"], ["floating", "floating"]], note: "slotted, glued, individual, two-post or floating"},
     {path: "saddle.pitch", kind: "one", label: "Travel of one turn", note: "travel of one turn of a height screw, post or thumbwheel"},
     {path: "saddle.travel", kind: "one", label: "Can still go down", note: "how far height screws, posts or thumbwheels can still go down"},
     {path: "saddle.post_spread", kind: "one", label: "From post to post", note: "on two posts"},
     {path: "saddle.length", kind: "one", label: "Length", figure: "saddle", note: "end to end"},
     {path: "saddle.thickness", kind: "one", label: "Thickness", figure: "saddle", note: "along the strings"},
     {path: "saddle.spread", kind: "one", label: "String spacing", figure: "saddle", note: "centre of string 1 to centre of the last"},
     {path: "saddle.setback", kind: "ends", label: "Setback as built", figure: "scale", note: "past the scale length, as built"},
     {path: "saddle.slot_depth", kind: "one", label: "Slot depth", figure: "height", note: "from the bridge's top"},
     {path: "saddle.pin_distance", kind: "ends", label: "To where the string enters", figure: "height", hint: "or: none",
      note: "saddle to where the string enters the bridge"},
     {path: "saddle.pickup", kind: "one", label: "Pickup under it", figure: "height", note: "thickness of what lies in the slot"},
     {path: "saddle.material", kind: "one", label: "Material"},
   ]},
  {id: "targets", title: "Ranges and targets", figure: "action", folded: true,
   lead: "The target, and the range in which a reading is left alone.",
   fields: [
     {path: "targets.relief", kind: "band", label: "Relief", figure: "relief"},
     {path: "targets.action", kind: "bands", label: "Action at fret 12", figure: "action", note: "open, at fret 12"},
     {path: "targets.first", kind: "bands", label: "Gap at the 1st fret", figure: "first"},
     {path: "attack", kind: "attack", label: "Pick strength", figure: "buzz",
      words: [["light", "light"], ["medium", "medium"], ["firm", "firm"], ["any", "any"]], usual: "medium", note: "light, medium, firm or any"},
     {path: "targets", note: "low, aim, high: what is in range is left alone"},
   ]},
  {id: "tools", title: "Tools", folded: true, figure: "feeler", lead: "What each reads to, plus or minus.",
   fields: [
     {path: "tools.action", kind: "one", label: "Ruler at fret 12"}, {path: "tools.first", kind: "one", label: "Feelers at fret 1"},
     {path: "tools.relief", kind: "one", label: "Feelers at the relief"}, {path: "tools.caliper", kind: "one", label: "Caliper"},
     {path: "tools.ruler", kind: "one", label: "Ruler at the bridge"},
     {path: "tools", note: "each reads to plus or minus this"},
   ]},
  {id: "job", title: "The job", folded: true,
   fields: [
     {path: "job.title", kind: "one", label: "Job", wide: true}, {path: "job.owner", kind: "one", label: "Owner"},
     {path: "job.ref", kind: "one", label: "Reference"}, {path: "job.by", kind: "one", label: "By"},
     {path: "job.date", kind: "one", label: "Date"}, {path: "readings.*.notes", kind: "one", label: "Notes on this reading", wide: true},
   ]},
];

export const makes = [["plain-steel", "plain steel"], ["wound-bronze", "wound, bronze"],
  ["wound-nickel-plated", "wound, nickel-plated steel"], ["wound-nickel", "wound, pure nickel"],
  ["wound-steel", "wound, steel"], ["wound-nylon", "wound, nylon core"], ["plain-nylon", "plain nylon"],
  ["plain-fluorocarbon", "fluorocarbon"], ["plain-gut", "gut"]];

// A kind of instrument in words, by its profile.
const kinds = new Map([["eight-string", "eight-string guitar"], ["five-string-bass", "five-string bass"],
  ["nylon-string-classical", "nylon-string classical"], ["seven-string", "seven-string guitar"],
  ["steel-string-acoustic", "steel-string acoustic"], ["twelve-string", "twelve-string guitar"], ["ukulele-reentrant", "re-entrant ukulele"]]);
export const kindOf = (profile) => kinds.get(profile) || profile.replaceAll("-", " ");

const notes = new Map([
  ["units", "of a bare length; 0.012 in, 12 thou and 5/64 in are read too"],
  ["profile", "typical dimensions, ranges and limits; what this sheet says comes first"],
  ["readings", "the last of several counts and stands alone"],
  ...sections.flatMap((section) => section.fields).filter((field) => field.note).map((field) => [field.path, field.note]),
]);

// The remark beside a value in a saved sheet.
export const comments = (path) => notes.get(path.replace(/^readings\.\d+\./, "readings.*.")) || "";
