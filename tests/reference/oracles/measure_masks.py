"""Measures masks with OpenCV and scikit-image, so that Rondure's figures can be held against theirs.

Usage: python3 measure_masks.py JOBS.json
JOBS.json is a list of {"name", "mask": path of an 8-bit grey picture (0 outside), "axisX": px, "rimY": px or null}.
Prints one JSON object: the versions, and for each mask what the libraries read. Lengths in px; pixel edges lie at whole
numbers, as in Rondure, so half a pixel is added to what the libraries count from pixel middles.
"""

import json
import sys

import cv2
import numpy
import skimage
from scipy import ndimage
from skimage import measure


def mirror_dice(mask, axis_x, rim_y):
    """Twice the shared area over both areas, the axis on a pixel's edge or middle, rows above the rim only."""
    above = mask[: int(rim_y)] if rim_y is not None else mask
    height, width = above.shape
    columns = numpy.arange(width)
    mirrored_columns = numpy.rint(2 * axis_x - 1 - columns).astype(int)
    mirrored = numpy.zeros_like(above)
    held = (mirrored_columns >= 0) & (mirrored_columns < width)
    mirrored[:, columns[held]] = above[:, mirrored_columns[held]]
    return float(2 * numpy.logical_and(above, mirrored).sum() / (above.sum() + mirrored.sum()))


def measured(job):
    grey = cv2.imread(job["mask"], cv2.IMREAD_GRAYSCALE)
    mask = (grey > 127).astype(numpy.uint8)

    contours, _ = cv2.findContours(mask, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    filled = numpy.zeros_like(mask)
    cv2.drawContours(filled, contours, -1, 1, cv2.FILLED)
    points = numpy.concatenate(contours).reshape(-1, 2)
    # The four corners of every pixel on the edge: the hull of the pixels as squares.
    corners = numpy.concatenate([points + numpy.array(corner) for corner in ((0, 0), (1, 0), (0, 1), (1, 1))])
    hull_area = cv2.contourArea(cv2.convexHull(corners.astype(numpy.float32)))
    _, round_middles = cv2.minEnclosingCircle(points.astype(numpy.float32))
    # A margin, so that the picture's border counts as outside.
    padded = numpy.pad(filled, 2)
    inscribed = cv2.distanceTransform(padded, cv2.DIST_L2, cv2.DIST_MASK_PRECISE).max()

    region = measure.regionprops(mask)[0]
    filled_by_scipy = ndimage.binary_fill_holes(mask)
    top, left, bottom, right = region.bbox
    return {
        "name": job["name"],
        "area": int(region.area),
        "filledArea": int(filled.sum()),
        "filledAreaScipy": int(filled_by_scipy.sum()),
        "centroidX": float(region.centroid[1] + 0.5),
        "centroidY": float(region.centroid[0] + 0.5),
        "width": right - left,
        "height": bottom - top,
        "hullArea": float(hull_area),
        "crofton": float(measure.perimeter_crofton(filled, directions=4)),
        # OpenCV adds 1e-4 of its own.
        "circumscribedMiddles": float(round_middles - 1e-4),
        "inscribedToMiddles": float(inscribed),
        "dice": mirror_dice(mask, job["axisX"], job["rimY"]),
    }


with open(sys.argv[1], encoding="utf-8") as jobs:
    print(
        json.dumps(
            {
                "opencv": cv2.__version__,
                "skimage": skimage.__version__,
                "masks": [measured(job) for job in json.load(jobs)],
            }
        )
    )
