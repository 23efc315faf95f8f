# SPDX-License-Identifier: MIT
"""The paper in place of a part that waits: why, and which steps come before it, by name and number."""
from figures_bench import words
from figures_card import leads


def is_between(pack, finding, figure):
    """Of three strings or more past one limit the least and the most are told; this is neither. Of several
    odd ones at once it is told how far each is off, not what each reads."""
    code = finding["code"]
    alike = [other for other in pack.result["findings"] if (other["code"], other["level"]) == (code, finding["level"])]
    if code == "reading-odd" and figure["of"] == "read" and len(alike) > 1:
        return True
    reads = [other for finding in pack.result["findings"] if finding["code"] == code and finding["string"]
             for other in finding["figures"] if other["of"] == "read"]
    ends = {chosen(reads, key=lambda other: other["value"])["shown"] for chosen in (min, max)} if reads else set()
    return len(reads) >= 3 and figure["of"] == "read" and figure["shown"] not in ends


def waits(pack):
    """In place of a part that waits: why, and the steps that come before it, and no others."""
    order = ("now", "rod", "frets", "nut", "saddle", "tune")
    for which, title in (("nut", "Nut"), ("saddle", "Saddle")):
        if not pack.waits(which):
            continue
        told, numbers = words(pack, title), [row[0] for row in pack.rows(title)]
        at = max(0, told.find("Do this first"))
        made = pack.result["steps"][-1]["act"] == "measure-new-part"   # another part comes first
        for step in pack.result["steps"]:
            first = made or order.index(step["stage"]) < order.index(which) or step["act"] in (
                "neck-angle", "file-peaks")
            pack.same(f"{which} waits: {step['act']}", str(step["step"]) in numbers, first)
            for figure in leads(pack, step) if first else []:
                at = told.find(figure["shown"], at)
                if at < 0:
                    return pack.report.wrong(f"{which} waits: {step['act']}", figure["shown"], "nowhere")
        codes = pack.result[which]["withheld_by"]
        for finding in pack.result["findings"]:
            if finding["code"] in codes:
                for figure in finding["figures"]:
                    pack.same(f"{which} waits: {finding['code']}", figure["shown"] in told
                              or "their ranges by" in told or is_between(pack, finding, figure), True)
        until = numbers.index("Do this first") if "Do this first" in numbers else len(numbers)
        pack.same(f"{which} waits: for a reason", until > 3, True)  # WAIT, what, why, ..


CHECKS = (waits,)
