# SPDX-License-Identifier: MIT
"""Sheets to hold what is shown against: one for each act, and random instruments. Each as the text
the program reads, and as it says everything by itself, its profile laid under it."""
import os
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "oracle"))
import jobs as random_jobs  # noqa: E402
import sheet  # noqa: E402
import yaml  # noqa: E402

import acts  # noqa: E402

# What holds where neither a sheet nor its profile says anything.
UNSAID = {"attack": "medium", "instrument": {"rod": "unknown"}}


def laid_under(profile, doc):
    """A sheet over its profile: mappings key by key, everything else whole."""
    if not (isinstance(profile, dict) and isinstance(doc, dict)):
        return doc
    merged = dict(profile)
    for key, value in doc.items():
        merged[key] = laid_under(profile[key], value) if key in profile else value
    return merged


def whole(doc):
    """The sheet with all its profile says, as the oracle reads one."""
    if "profile" in doc:
        with open(f"profiles/{doc['profile']}.yaml", encoding="utf-8") as file:
            doc = laid_under(laid_under(UNSAID, yaml.safe_load(file)), doc)
    whole_doc = yaml.load(yaml.dump(doc).replace("'~'", "~"), sheet.LOADER)
    for reading in whole_doc["readings"]:
        if reading.get("relief") in ("wide", "ping", "none"):  # heard, not measured
            del reading["relief"]
    return whole_doc


def every(randoms, step=1):
    """(name, text, whole document) of each act's sheets, or of one in `step`, and of so many random
    ones."""
    for name, _, doc in acts.ROWS[::step]:
        yield name, yaml.dump(doc, sort_keys=False).replace("'~'", "~"), whole(doc)
    for number in range(randoms):
        _, text = random_jobs.make("shown", number)
        yield f"random {number}", text, yaml.load(text, sheet.LOADER)
