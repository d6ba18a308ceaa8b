"""Reads DXF files with ezdxf and prints what it found as a JSON list, one item a file. Run with /usr/bin/python3.

Each file is read by ezdxf.readfile, which is the strict reader (not the recovering one), and audited.
Areas come from the vertices and bulges that ezdxf read, by the shoelace formula plus circular segments.
"""
import json
import math
import sys

try:
    import ezdxf
    from ezdxf import bbox
except ImportError:
    sys.exit("ezdxf is missing. Install it with: apt-get install python3-ezdxf")


def area(points, closed):
    if not closed:
        return 0.0
    total = 0.0
    for (x1, y1, bulge), (x2, y2, _) in zip(points, points[1:] + points[:1]):
        total += (x1 * y2 - x2 * y1) / 2
        if bulge:
            sweep = 4 * math.atan(bulge)
            radius = math.hypot(x2 - x1, y2 - y1) / 2 / math.sin(abs(sweep) / 2)
            total += radius * radius * (sweep - math.sin(sweep)) / 2
    return abs(total)


def contents(path):
    doc = ezdxf.readfile(path)
    auditor = doc.audit()
    found = {
        "version": doc.dxfversion,
        "errors": [e.message for e in auditor.errors] + [e.message for e in auditor.fixes],
        "units": doc.header.get("$INSUNITS"),
        "measurement": doc.header.get("$MEASUREMENT"),
        "extMin": list(doc.header.get("$EXTMIN"))[:2],
        "extMax": list(doc.header.get("$EXTMAX"))[:2],
        "layers": [layer.dxf.name for layer in doc.layers],
        "layouts": doc.layout_names_in_taborder(),
        "view": [list(v.dxf.center)[:2] + [v.dxf.height, v.dxf.aspect_ratio] for v in doc.viewports.get("*Active")],
        "entities": [],
    }
    model = doc.modelspace()
    for e in model:
        item = {"type": e.dxftype(), "layer": e.dxf.layer}
        if e.dxftype() == "LWPOLYLINE":
            points = [tuple(p) for p in e.get_points("xyb")]
            item.update(closed=bool(e.closed), points=points, area=area(points, e.closed))
        elif e.dxftype() == "CIRCLE":
            item.update(centre=list(e.dxf.center)[:2], radius=e.dxf.radius, area=math.pi * e.dxf.radius ** 2)
        elif e.dxftype() == "LINE":
            item.update({"from": list(e.dxf.start)[:2], "to": list(e.dxf.end)[:2]})
        found["entities"].append(item)
    box = bbox.extents(model, flatten=0.0001)
    found["boxMin"] = list(box.extmin)[:2]
    found["boxMax"] = list(box.extmax)[:2]
    return found


print(json.dumps([contents(path) for path in sys.argv[1:]]))
