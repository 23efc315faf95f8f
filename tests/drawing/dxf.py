# SPDX-License-Identifier: MIT
"""Reads outlines back from their DXF with a reader that is not ours, Debian's python3-ezdxf, whose
audit must find nothing to mend."""
import ezdxf

import pdf

BLACK, RED = (0.0, 0.0, 0.0), (0.7, 0.0, 0.0)


def audit(report, path):
    """The document, once it is as clean as can be."""
    document = ezdxf.readfile(path)
    auditor = document.audit()
    told = [entry.message for entry in auditor.errors + auditor.fixes]
    if told:
        report.wrong("DXF audit", "no errors, nothing mended", told[:5])
    wanted = {"$ACADVER": "AC1021", "$INSUNITS": 4, "$MEASUREMENT": 1}
    got = {key: document.header.get(key) for key in wanted}
    if got != wanted:
        report.wrong("DXF header", wanted, got)
    return document


def points(entity):
    """Points, and the bulge of the way from each."""
    if entity.dxftype() == "LINE":
        return [entity.dxf.start, entity.dxf.end], (0.0, 0.0)
    found = entity.get_points("xyb")
    return found, tuple(b for _, _, b in found)


def read(report, path):
    """The page of a drawing, as the PDF's reader gives one."""
    document = audit(report, path)
    page = pdf.Page(0.0, 0.0)
    for entity in document.modelspace():
        layer = document.layers.get(entity.dxf.layer)
        if entity.dxftype() == "TEXT":
            page.texts.append((entity.dxf.insert[0], entity.dxf.insert[1], entity.plain_text()))
        elif entity.dxftype() in ("LINE", "LWPOLYLINE"):
            closed = entity.dxftype() == "LWPOLYLINE" and entity.closed
            dash = layer.dxf.linetype != "Continuous" and document.linetypes.get(layer.dxf.linetype)
            places, bulges = points(entity)
            page.paths.append(pdf.Path([(p[0], p[1]) for p in places], closed, False,
                                       layer.dxf.lineweight / 100, dash or (),
                                       RED if layer.color == 1 else BLACK, any(bulges), layer.dxf.name,
                                       bulges=bulges))
        else:
            raise ValueError(f"an entity no outline uses: {entity.dxftype()}")
    return page
