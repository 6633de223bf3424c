"""Thins masks with scikit-image and tells their skeletons, so that Rondure's can be held against them.

Usage: python3 skeletonize_masks.py JOBS.json
JOBS.json is a list of {"name", "width", "height", "runs": [[row, first column, length], ...]}.
Prints one JSON object: scikit-image's version, and for each mask the skeleton's runs, its ends (pixels with one neighbour) and its joints (pixels
with three and more lines leaving them, touching ones taken together), as places of pixel middles.
"""

import json
import sys

import numpy
import skimage
from scipy import ndimage
from skimage.morphology import skeletonize

RING = [(-1, 0), (-1, 1), (0, 1), (1, 1), (1, 0), (1, -1), (0, -1), (-1, -1)]


def told(job):
    mask = numpy.zeros((job["height"], job["width"]), bool)
    for row, first, length in job["runs"]:
        mask[row, first : first + length] = True
    skeleton = skeletonize(mask)
    padded = numpy.pad(skeleton, 1)
    ring = [numpy.roll(padded, (-dy, -dx), (0, 1))[1:-1, 1:-1] for dy, dx in RING]
    neighbours = sum(one.astype(int) for one in ring)
    lines = sum((~ring[k] & ring[(k + 1) % 8]).astype(int) for k in range(8))
    ends = numpy.argwhere(skeleton & (neighbours == 1))
    labels, count = ndimage.label(skeleton & (lines >= 3), numpy.ones((3, 3)))
    joints = [numpy.argwhere(labels == k + 1).mean(0) for k in range(count)]
    runs = []
    for row in range(job["height"]):
        columns = numpy.flatnonzero(skeleton[row])
        for piece in numpy.split(columns, numpy.flatnonzero(numpy.diff(columns) > 1) + 1):
            if len(piece):
                runs.append([row, int(piece[0]), len(piece)])
    place = lambda point: [round(float(point[1]) + 0.5, 2), round(float(point[0]) + 0.5, 2)]
    return {"name": job["name"], "runs": runs, "ends": [place(p) for p in ends], "joints": [place(p) for p in joints]}


with open(sys.argv[1]) as file:
    jobs = json.load(file)
json.dump({"version": skimage.__version__, "skeletons": [told(job) for job in jobs]}, sys.stdout, separators=(",", ":"))
