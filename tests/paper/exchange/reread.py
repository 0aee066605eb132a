"""Reads a DXF file with ezdxf and holds it against the pattern document beside it.

usage: reread.py FILE.dxf FILE.json

The document is `pattern.json`, or `range.json` of a graded range. Lengths are measured here,
from the path data of the document and from the vertices of the drawing. Tells what is wrong, a
line each, and ends with 1; or tells how much was held against what, and ends with 0.
"""

import json
import math
import re
import sys
import traceback

import ezdxf
import numpy as np
from ezdxf import decode_dxf_unicode, recover

# Millimetres. An edge keeps its length within LENGTH; a point is where it should be within
# PLACE (coordinates are written to a ten-thousandth); what lies on a curve may lie a chord's
# bulge beside it.
LENGTH = 0.05
PLACE = 0.0005
BESIDE = 0.02
# A drill hole lies 13 mm inside the tip of its dart (Furrer, class handout The Bodice Sloper).
DRILL = 13.0
# Distance between the cuts of a double notch (value from memory).
APART = 6.0

wrong = []


def must(holds, text):
    if not holds:
        wrong.append(text)


class Path:
    """SVG path data of lines and cubics as a dense chain of points, y up."""

    def __init__(self, data, mirrored):
        points = []
        for letter, numbers in re.findall(r"([A-Z])([^A-Z]*)", data):
            at = np.array(re.findall(r"-?[\d.]+(?:e-?\d+)?", numbers), dtype=float).reshape(-1, 2)
            if letter == "M":
                points.append(at)
            elif letter == "L":
                points.append(at)
            elif letter == "C":
                t = np.linspace(0, 1, 1025)[1:, None]
                p = [points[-1][-1], *at]
                points.append(
                    (1 - t) ** 3 * p[0]
                    + 3 * (1 - t) ** 2 * t * p[1]
                    + 3 * (1 - t) * t**2 * p[2]
                    + t**3 * p[3]
                )
            elif letter == "Z":
                points.append(points[0][:1])
            else:
                raise ValueError(letter)
        self.points = np.concatenate(points) * [-1 if mirrored else 1, -1]

    @property
    def length(self):
        return length(self.points)

    def at(self, along):
        steps = np.hypot(*np.diff(self.points, axis=0).T)
        walked = np.concatenate([[0], np.cumsum(steps)])
        return np.array([np.interp(along, walked, self.points[:, k]) for k in (0, 1)])


def length(points):
    return float(np.hypot(*np.diff(np.asarray(points), axis=0).T).sum())


def area(points):
    x, y = np.asarray(points).T
    return float((x * np.roll(y, -1) - np.roll(x, -1) * y).sum() / 2)


def apart(a, b):
    return math.hypot(a[0] - b[0], a[1] - b[1])


def distance(point, chain):
    """From a point to the nearest place on a chain of straight lines."""
    chain = np.asarray(chain)
    start, step = chain[:-1], np.diff(chain, axis=0)
    square = np.maximum((step**2).sum(axis=1), 1e-18)
    t = np.clip(((point - start) * step).sum(axis=1) / square, 0, 1)
    return float(np.hypot(*(start + t[:, None] * step - point).T).min())


def xy(point):
    return np.array([point.x, point.y])


class Block:
    """What is in a block, by layer."""

    def __init__(self, block):
        self.name = block.name
        self.entities = list(block)
        self.texts = [decode_dxf_unicode(t.dxf.text) for t in self.on("TEXT", "1")]

    def on(self, kind, *layers):
        return [e for e in self.entities if e.dxftype() == kind and e.dxf.layer in layers]

    def points(self, *layers):
        return [xy(point.dxf.location) for point in self.on("POINT", *layers)]

    def lines(self, layer):
        return [(xy(l.dxf.start), xy(l.dxf.end)) for l in self.on("LINE", layer)]

    def chains(self, layer):
        found = self.on("POLYLINE", layer)
        return [np.array([xy(v.dxf.location) for v in chain.vertices]) for chain in found]

    def text(self, key):
        found = [text[len(key) + 2 :] for text in self.texts if text.startswith(key + ": ")]
        must(len(found) == 1, f"{self.name}: {len(found)} texts {key}")
        return found[0] if found else None


def same_chain(chain, points):
    """Whether two chains of few points are one, either way round."""
    points = np.asarray(points)
    if len(chain) != len(points):
        return False
    return any(np.abs(chain - way).max() < PLACE for way in (points, points[::-1]))


def check_boundary(block, piece, mirrored):
    name = block.name
    found = block.on("POLYLINE", "1")
    must(len(found) == 1, f"{name}: {len(found)} boundaries")
    must(found[0].is_closed, f"{name}: the boundary is open")
    ring = block.chains("1")[0]
    must(apart(ring[0], ring[-1]) > PLACE, f"{name}: the boundary names its start twice")
    closed = np.concatenate([ring, ring[:1]])

    # Every vertex is a point on layer 2 or 3, and there is no other.
    marks = sorted(map(tuple, block.points("2", "3")))
    must(marks == sorted(map(tuple, ring)), f"{name}: a vertex without its point")
    turns = block.points("2")

    # Seen the same way round: clockwise, and as large.
    edges = [Path(edge["path"], mirrored) for edge in piece["edges"]]
    if piece["cut_line"]:
        outline = Path(piece["cut_line"], mirrored).points
    else:
        outline = np.concatenate([edge.points for edge in edges])
    must(area(ring) < 0, f"{name}: the boundary does not run clockwise")
    expected = abs(area(outline))
    must(abs(area(ring) + expected) < expected * 1e-3, f"{name}: area {area(ring)}, {expected}")
    off = max(distance(vertex, outline) for vertex in ring)
    must(off < BESIDE, f"{name}: a vertex lies {off} mm beside the boundary")

    if piece["cut_line"]:
        expected = Path(piece["cut_line"], mirrored).length
        must(abs(length(closed) - expected) < LENGTH, f"{name}: cut line {length(closed)}, {expected}")
        sewn = block.chains("14")
        names = [e["name"] for e in piece["edges"] if e["role"] != "fold"]
        wanted = [p for p, e in zip(edges, piece["edges"]) if e["role"] != "fold"]
        must(len(sewn) == len(wanted), f"{name}: {len(sewn)} sew lines for {len(wanted)} edges")
        for edge, chain, path in zip(names, sewn, wanted):
            must(apart(chain[0], path.points[0]) < PLACE, f"{name} {edge}: sew line starts elsewhere")
            must(apart(chain[-1], path.points[-1]) < PLACE, f"{name} {edge}: sew line ends elsewhere")
            must(abs(length(chain) - path.length) < LENGTH, f"{name} {edge}: {length(chain)}, {path.length}")
        return closed

    must(not block.chains("14"), f"{name}: sew lines without an allowance")
    for edge, path in zip(piece["edges"], edges):
        ends = [path.points[0], path.points[-1]]
        if mirrored:
            ends.reverse()
        at = [int(np.argmin(np.hypot(*(ring - end).T))) for end in ends]
        label = f"{name} {edge['name']}"
        for end, place in zip(ends, at):
            must(apart(ring[place], end) < PLACE, f"{label}: no vertex where it ends")
            must(any(apart(turn, end) < PLACE for turn in turns), f"{label}: no turn point")
        count = (at[1] - at[0]) % len(ring)
        chain = ring[[(at[0] + k) % len(ring) for k in range(count + 1)]]
        must(abs(length(chain) - path.length) < LENGTH, f"{label}: {length(chain)}, {path.length}")
    return closed


def check_lines(block, piece, mirrored, boundary):
    name = block.name
    view = np.array([-1 if mirrored else 1, -1])
    folds = [Path(e["path"], mirrored) for e in piece["edges"] if e["role"] == "fold"]
    mirrors = block.lines("6")
    must(len(mirrors) == len(folds), f"{name}: {len(mirrors)} mirror lines for {len(folds)} folds")
    for line, fold in zip(mirrors, folds):
        for end in line:
            must(min(apart(end, v) for v in boundary) < PLACE, f"{name}: the mirror line ends off the boundary")
        x = fold.points[0][0]
        must(max(abs(end[0] - x) for end in line) < PLACE, f"{name}: the mirror line is not the fold")
        expected = fold.length
        if piece["cut_line"]:
            cut = Path(piece["cut_line"], mirrored).points
            on = cut[np.abs(cut[:, 0] - x) < 1e-3]
            expected = float(np.ptp(on[:, 1]))
            must(expected >= fold.length, f"{name}: the cut line leaves the fold")
        must(abs(apart(*line) - expected) < LENGTH, f"{name}: mirror line {apart(*line)}, {expected}")

    grain = block.lines("7")
    must(len(grain) == 1, f"{name}: {len(grain)} grain lines")
    if grain:
        must(same_chain(np.array(grain[0]), np.array(piece["grain"]) * view), f"{name}: the grain line lies elsewhere")

    inner = block.chains("8")
    must(len(inner) == len(piece["darts"]) + len(piece["lines"]), f"{name}: {len(inner)} internal lines")
    holes = block.points("13")
    expected = []
    for dart in piece["darts"]:
        legs, apexes = (np.array(dart[k]) * view for k in ("legs", "apexes"))
        if len(apexes) == 1:
            wanted = [legs[0], apexes[0], legs[1]]
        else:
            wanted = [apexes[0], legs[0], apexes[1], legs[1], apexes[0]]
        must(any(same_chain(c, wanted) for c in inner), f"{name}: no legs of the {dart['name']} dart")
        for apex in apexes:
            inward = legs.mean(axis=0) - apex
            expected.append(apex + inward * DRILL / np.hypot(*inward))
    must(len(holes) == len(expected), f"{name}: {len(holes)} drill holes for {len(expected)} apexes")
    for place in expected:
        must(any(apart(place, hole) < PLACE for hole in holes), f"{name}: no drill hole at {place}")
    for line in piece["lines"]:
        path = Path(line["path"], mirrored)
        fits = [
            c
            for c in inner
            if apart(c[0], path.points[0]) < PLACE and apart(c[-1], path.points[-1]) < PLACE
        ]
        ok = any(abs(length(c) - path.length) < LENGTH for c in fits)
        must(ok, f"{name}: no {line['name']} line")


def check_notches(block, piece, mirrored, boundary):
    name = block.name
    notches = []
    for point in block.on("POINT", "4"):
        at = xy(point.dxf.location)
        off = distance(at, boundary)
        must(off < BESIDE, f"{name}: a notch lies {off} mm beside the boundary")
        angle = math.radians(point.dxf.angle)
        deep = point.dxf.thickness
        # 3 to 6 mm (NIMI, Dress Making Trade Theory), less in a narrower allowance.
        must(2.0 < deep < 6.001, f"{name}: a notch is {deep} mm deep")
        notches.append((at, np.array([math.cos(angle), math.sin(angle)])))

    def used_by(place):
        """The notches whose way inward meets a place on the stitching line."""
        found = set()
        for k, (at, inward) in enumerate(notches):
            way = place - at
            if abs(way[0] * inward[1] - way[1] * inward[0]) < LENGTH and way @ inward > -BESIDE:
                if np.hypot(*way) < 130:
                    found.add(k)
        return found

    used = set()
    edges = {e["name"]: Path(e["path"], mirrored) for e in piece["edges"]}
    for notch in piece["notches"]:
        path, at = edges[notch["edge"]], notch["at"]
        single = used_by(path.at(at))
        double = [used_by(path.at(at + by)) for by in (-APART / 2, APART / 2)]
        used |= single or set().union(*double)
        must(single or all(double), f"{name}: no notch {notch['name']} on {notch['edge']}")
    for dart in piece["darts"]:
        if dart["edge"]:
            for leg in np.array(dart["legs"]) * [-1 if mirrored else 1, -1]:
                used |= used_by(leg)
                must(used_by(leg), f"{name}: no notch at the {dart['name']} dart")
    must(len(used) == len(notches), f"{name}: {len(notches) - len(used)} notches that mark nothing")
    return len(notches)


def main(drawing, document):
    with open(document, encoding="utf-8") as file:
        document = json.load(file)
    ranged = document["format"] == "blockwright-range"
    sizes = document["sizes"] if ranged else [{"label": None, "pattern": document}]
    pieces = {
        (piece["name"], size["label"]): (piece, size["pattern"]["block"])
        for size in sizes
        for piece in size["pattern"]["pieces"]
    }

    # As it is, and as one that may be broken: no fault and nothing to mend either way.
    dxf = ezdxf.readfile(drawing)
    for auditor in (dxf.audit(), recover.readfile(drawing)[1]):
        for fault in [*auditor.errors, *auditor.fixes]:
            wrong.append(f"audit: {fault.message}")

    blocks = [Block(b) for b in dxf.blocks if not b.is_any_layout]
    inserts = [insert.dxf.name for insert in dxf.modelspace().query("INSERT")]
    must(sorted(inserts) == sorted(b.name for b in blocks), "blocks and inserts differ")
    texts = dxf.modelspace().query("TEXT[layer=='1']")
    texts = [decode_dxf_unicode(text.dxf.text) for text in texts]
    must("Units: METRIC" in texts, "no units")
    must(f"Style Name: {document['title']}" in texts, f"the style is not {document['title']}: {texts}")

    edges = notches = 0
    seen = set()
    for block in blocks:
        kinds = {entity.dxftype() for entity in block.entities}
        must(kinds <= {"POLYLINE", "LINE", "POINT", "TEXT"}, f"{block.name}: {kinds}")
        key = (block.text("Piece Name"), block.text("Size") if ranged else None)
        must(key in pieces and key not in seen, f"{block.name}: no piece {key}")
        seen.add(key)
        piece, of = pieces[key]
        must(block.text("Category") == of, f"{block.name}: category")
        must(block.text("Quantity") == {"pair": "1,1"}.get(piece["cut"], "1"), f"{block.name}: quantity")
        mirrored = "mirror of the print" in block.text("Annotation")
        must(not mirrored or piece["cut"] == "single", f"{block.name}: mirrored")
        boundary = check_boundary(block, piece, mirrored)
        check_lines(block, piece, mirrored, boundary)
        notches += check_notches(block, piece, mirrored, boundary)
        edges += len(piece["edges"])
    must(seen == set(pieces), f"missing: {set(pieces) - seen}")
    for fault in wrong:
        print(fault)
    if wrong:
        return 1
    print(f"{len(blocks)} pieces, {edges} edges and {notches} notches as they should be")
    return 0


if __name__ == "__main__":
    # Pairs of a drawing and its document: what is found of each, ended by a line of its own.
    pairs = iter(sys.argv[1:])
    for drawing, document in zip(pairs, pairs):
        wrong.clear()
        try:
            status = main(drawing, document)
        except Exception:
            traceback.print_exc(file=sys.stdout)
            status = 2
        print(f"-- status {status}")
