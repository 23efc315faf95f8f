# SPDX-License-Identifier: MIT
"""The height of a face's capitals, read from its file: that of its H, in ems. The tables are those of
the OpenType specification (head, loca, glyf, cmap of format 4)."""
import struct


def u16(data, at):
    return struct.unpack_from(">H", data, at)[0]


def glyph_of(cmap, code):
    """The number of a character's glyph, by a subtable of format 4."""
    for k in range(u16(cmap, 2)):
        at = struct.unpack_from(">I", cmap, 8 + 8 * k)[0]
        if u16(cmap, at) != 4:
            continue
        count = u16(cmap, at + 6) // 2
        ends, starts = at + 14, at + 16 + 2 * count
        for n in range(count):
            first = u16(cmap, starts + 2 * n)
            if first <= code <= u16(cmap, ends + 2 * n):
                delta, offset = (u16(cmap, starts + 2 * count * m + 2 * n) for m in (1, 2))
                if offset == 0:
                    return (code + delta) % 65536
                place = starts + 4 * count + 2 * n + offset + 2 * (code - first)
                return (u16(cmap, place) + delta) % 65536
    raise ValueError(f"no glyph for {code}")


def capital(path):
    """The top of H over its base line, in ems."""
    with open(path, "rb") as file:
        data = file.read()
    tables = {}
    for k in range(u16(data, 4)):
        tag, _, at, size = struct.unpack_from(">4sIII", data, 12 + 16 * k)
        tables[tag] = data[at:at + size]
    head, loca = tables[b"head"], tables[b"loca"]
    glyph = glyph_of(tables[b"cmap"], ord("H"))
    long_offsets = u16(head, 50) != 0
    at = struct.unpack_from(">I", loca, 4 * glyph)[0] if long_offsets else 2 * u16(loca, 2 * glyph)
    top = struct.unpack_from(">h", tables[b"glyf"], at + 8)[0]
    return top / u16(head, 18)
