"""Reads an SVG with Python's strict XML parser and prints its elements as a JSON list: tag, attributes, own text."""
import json
import sys
import xml.etree.ElementTree as tree

root = tree.parse(sys.argv[1]).getroot()
print(json.dumps([{"tag": e.tag.split("}")[-1], "attributes": e.attrib, "text": (e.text or "").strip(" \n")} for e in root.iter()]))
