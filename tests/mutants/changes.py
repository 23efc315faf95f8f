# SPDX-License-Identifier: MIT
"""Which tokens of a source can be changed, and to what; for drawings, which of them is layout."""
import re

# What may stand in a token's place. Where there is more than one, chance picks.
ARITHMETIC = {"+": "-*", "-": "+", "*": "/+", "/": "*", "+=": ["-="], "-=": ["+="],
              "fmin": ["fmax"], "fmax": ["fmin"], "sin": ["cos"], "cos": ["sin"]}
OTHERS = {**ARITHMETIC, "<": ["<=", ">"], "<=": ["<", ">="], ">": [">=", "<"], ">=": [">", "<="],
          "==": ["!="], "!=": ["=="], "&&": ["||"], "||": ["&&"], "++": ["--"], "--": ["++"],
          "true": ["false"], "false": ["true"]}

# What a person acts on: which end, which way, which way rounded, what is asked for.
NAMES = {"SIL_DOWN": ["SIL_UP", "SIL_NEAREST"], "SIL_UP": ["SIL_DOWN", "SIL_NEAREST"],
         "SIL_NEAREST": ["SIL_UP", "SIL_DOWN"], "SIL_TAKE": ["SIL_RAISE"],
         "SIL_RAISE": ["SIL_TAKE"], "BRIEF_TREBLE": ["BRIEF_BASS"], "BRIEF_BASS": ["BRIEF_TREBLE"],
         "BRIEF_DOWN": ["BRIEF_UP"], "BRIEF_UP": ["BRIEF_DOWN"],
         "BRIEF_TIGHTEN": ["BRIEF_EASE"], "BRIEF_EASE": ["BRIEF_TIGHTEN"]}
# A text's end wherever it is named; a way where it is the whole text, as elsewhere it is an idiom:
# a string is held down behind a fret, and a neck is set up.
ENDS = {"treble": "bass", "bass": "treble", "Treble": "Bass", "Bass": "Treble"}
WAYS = {'"up"': '"down"', '"down"': '"up"', '"tighten"': '"ease"', '"ease"': '"tighten"'}

TOKEN = re.compile(r'"(?:\\.|[^"\\])*"|\'(?:\\.|[^\'\\])*\'|[A-Za-z_]\w*|'
                   r"0[xX]\w+|\d+\.?\d*(?:[eE][+-]?\d+)?\w*|"
                   r"->|\+\+|--|<<|>>|[-+*/<>=!]=|&&|\|\||.", re.DOTALL)
WHOLE = re.compile(r"\d+")
FLOATING = re.compile(r"\d+(\.\d*|[eE]|\.\d*[eE])([+-]?\d+)?")
# On paper: a line that works with a figure or a place of the part, and one that works with the paper.
OF_THE_PART = re.compile(r"brief|figure|plan\b|board|draw_at\(|"
                         r"\b(part|nut|slot|saddle|string|bearing|post|sheet|step|visit)(->|\[|\.)")
OF_THE_PAPER = re.compile(r"anchor|DRAW_(LEFT|RIGHT|MIDDLE|NOTE|HEAD|SMALL|COLUMN)|width|height|"
                          r"room|flow|strut|\bdouble\b|paper_|list == NULL|list != NULL")
# The widths of columns are no figures, for all their names.
OF_A_FORM = re.compile(r"\bform(->|\.)\w+")
# Blocks that are put beside each other, and the room they keep.
OF_BLOCKS = re.compile(r"\bdraw_shapes_(add|strut)\(")
# A list where it is declared: one place more changes nothing, and one less is seen by the compiler.
DECLARED = re.compile(r"^(?!\s*return\b)\s*(?:static |const |enum )*(?:[a-z]\w*)[ *]+\w[^=;]*\[$|"
                      r"[(,]\s*(?:const )?[a-z]\w*[ *]+(?:const )?\w+\[$")
# A minus that belongs to the figure behind it: no string, no fret.
OF_NONE = re.compile(r"(?:[(,=?:]|return) *-$")
# What counts only where memory ran out.
OF_NO_MEMORY = re.compile(r"\bfailed\b|no_memory")


def others(word, named, none=False):
    """What may stand in this token's place; of a -1 that says "none", any other below 0 says the same."""
    if WHOLE.fullmatch(word):
        less = [str(int(word) - 1)] if int(word) else []
        return less if none else [str(int(word) + 1)] + less
    if FLOATING.fullmatch(word):
        return [other for other in ("0.0", "1.0") if float(other) != float(word)]
    if named and word.startswith('"'):
        swapped = re.sub(r"\b([Tt]reble|[Bb]ass)\b", lambda m: ENDS[m.group()], word)
        swapped = WAYS.get(word, swapped)
        return [swapped] if swapped != word else []
    return OTHERS.get(word) or (NAMES.get(word, []) if named else [])
# A loop that does nothing but set anchors.
OF_ANCHORS = re.compile(r"^\n *for \([^\n]*\n[^\n]*anchor[^\n]*\n *\}")


def neighbours(code, start, end):
    """The tokens right before and behind, which may be brackets."""
    before = re.search(r"([\w.]+|[^\s\w])\s*$", code[:start][-80:])
    behind = re.match(r"\s*([\w.]+|[^\s\w])", code[end:end + 80])
    return before.group(1) if before else "", behind.group(1) if behind else ""


def is_layout(code, start, end):
    """Whether a token only places something on the paper: see the head of mutants.py."""
    word, (before, behind) = code[start:end], neighbours(code, start, end)
    line = code[code.rfind("\n", 0, start) + 1:code.find("\n", end)]
    number = WHOLE.fullmatch(word) or FLOATING.fullmatch(word)
    if not number and word not in OTHERS:
        return False  # a name or a text
    if number and "[" in before and "]" in behind:
        return False  # which one of several
    if OF_BLOCKS.search(line):
        return True
    if number and (FLOATING.fullmatch(word) or int(word) >= 2):
        return True
    if number and before in "(,{" and behind in "),}":
        return True
    if word in "+-" and (is_length(before) or is_length(behind)):
        return True
    if OF_ANCHORS.search(code[code.rfind("\n", 0, start):start + 200]):
        return True
    calculated = word in ARITHMETIC or before in ARITHMETIC or behind in ARITHMETIC
    placed = calculated or OF_THE_PAPER.search(line)
    return bool(placed) and not OF_THE_PART.search(OF_A_FORM.sub("", line))


def is_declared(code, start):
    """Whether a token says how many places a list has where it is declared."""
    return bool(DECLARED.search(code[code.rfind("\n", 0, start) + 1:start]))


def is_length(word):
    """Whether it is so much paper: any figure but 0 and 1."""
    return bool(FLOATING.fullmatch(word)) or bool(WHOLE.fullmatch(word)) and int(word) >= 2


def places(text, named, drawn):
    """(start, end, what may stand there) of every token that can be changed."""
    code = re.sub(r"/\*.*?\*/|^#.*?$", lambda m: re.sub(r"[^\n]", " ", m.group()), text,
                  flags=re.DOTALL | re.MULTILINE)
    found = []
    for token in TOKEN.finditer(code):
        word = token.group()
        before, after = code[token.start() - 1], code[token.end():token.end() + 1]
        if word == "*" and not (before == " " and after == " "):
            continue  # of a pointer
        line = code[code.rfind("\n", 0, token.start()) + 1:(code + "\n").find("\n", token.end())]
        if named and (OF_NO_MEMORY.search(line) or is_declared(code, token.start())):
            continue
        if drawn and is_layout(code, token.start(), token.end()):
            continue
        if may := others(word, named, bool(named and word == "1" and OF_NONE.search(code[:token.start()][-9:]))):
            found.append((token.start(), token.end(), may))
    return found
