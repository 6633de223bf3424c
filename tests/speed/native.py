"""The same picture work in native OpenCV: python3 native.py PHOTO FOLDER RUNS WIDTH HEIGHT SMALL_WIDTH SMALL_HEIGHT.

Unpacks PHOTO and shrinks it, turns the small copy into L*a*b*, and does the calls over that FOLDER holds (calls.json and
pictures.bin). Prints one JSON object: the version, its threads, and for each step the milliseconds of every run.
"""

import json
import sys
import time

import cv2
import numpy as np

DEPTHS = [np.uint8, np.int8, np.uint16, np.int16, np.int32, np.float32, np.float64]


def pictures_of(folder, stored):
    data = np.fromfile(f"{folder}/pictures.bin", np.uint8)
    for one in stored:
        depth, channels = DEPTHS[one["type"] & 7], (one["type"] >> 3) + 1
        part = data[one["offset"] : one["offset"] + one["bytes"]].view(depth)
        shape = (one["rows"], one["cols"]) if channels == 1 else (one["rows"], one["cols"], channels)
        yield part.reshape(shape)


def size(given):
    return (int(given["width"]), int(given["height"]))


def criteria(given):
    return (int(given["type"]), int(given["maxCount"]), float(given["epsilon"]))


def point(given):
    return (int(given["x"]), int(given["y"]))


def grab_cut(g):
    cv2.setRNGSeed(1)
    return cv2.grabCut(g[0], g[1], None, np.zeros((1, 65)), np.zeros((1, 65)), int(g[5]), int(g[6]))


# Each takes what was given to the call, in the order of OpenCV's C++ names: pictures it fills are None.
OPERATIONS = {
    "resize": lambda g: cv2.resize(g[0], size(g[2]), interpolation=int(g[5])),
    "threshold": lambda g: cv2.threshold(g[0], g[2], g[3], int(g[4])),
    "GaussianBlur": lambda g: cv2.GaussianBlur(g[0], size(g[2]), g[3], sigmaY=g[4], borderType=int(g[5])),
    "blur": lambda g: cv2.blur(g[0], size(g[2]), anchor=point(g[3]), borderType=int(g[4])),
    "dilate": lambda g: cv2.dilate(g[0], g[2]),
    "erode": lambda g: cv2.erode(g[0], g[2]),
    "morphologyEx": lambda g: cv2.morphologyEx(g[0], int(g[2]), g[3]),
    "connectedComponentsWithStats": lambda g: cv2.connectedComponentsWithStats(g[0], None, None, None, int(g[4]), int(g[5])),
    "distanceTransform": lambda g: cv2.distanceTransform(g[0], int(g[2]), int(g[3])),
    "grabCut": grab_cut,
    "findTransformECC": lambda g: cv2.findTransformECC(g[0], g[1], g[2], int(g[3]), criteria(g[4]), g[5], int(g[6])),
    "warpAffine": lambda g: cv2.warpAffine(g[0], g[2], size(g[3]), flags=int(g[4]), borderMode=int(g[5]), borderValue=tuple(g[6])),
    "goodFeaturesToTrack": lambda g: cv2.goodFeaturesToTrack(g[0], int(g[2]), g[3], g[4], mask=g[5], blockSize=int(g[6])),
    "calcOpticalFlowPyrLK": lambda g: cv2.calcOpticalFlowPyrLK(
        g[0], g[1], g[2], None, winSize=size(g[6]), maxLevel=int(g[7]), criteria=criteria(g[8])
    ),
    "adaptiveThreshold": lambda g: cv2.adaptiveThreshold(g[0], g[2], int(g[3]), int(g[4]), int(g[5]), g[6]),
    "findContours": lambda g: cv2.findContours(g[0], int(g[3]), int(g[4])),
    "findHomography": lambda g: cv2.findHomography(g[0], g[1], int(g[2])),
}
# These change what they are given.
CHANGES_INPUT = {"grabCut": 1, "findTransformECC": 2}


def timed(work):
    begun = time.perf_counter()
    result = work()
    return result, (time.perf_counter() - begun) * 1000


def one_run(photo, calls, pictures, wide, small):
    times = {}
    raster, times["decode"] = timed(lambda: cv2.resize(cv2.imread(photo, cv2.IMREAD_COLOR), wide, interpolation=cv2.INTER_AREA))
    copy = cv2.resize(raster, small, interpolation=cv2.INTER_AREA)
    _, times["lab"] = timed(lambda: cv2.cvtColor(copy.astype(np.float32) / 255, cv2.COLOR_BGR2Lab))
    for call in calls:
        given = [pictures[g["picture"]] if isinstance(g, dict) and "picture" in g else g for g in call["given"]]
        changed = CHANGES_INPUT.get(call["op"])
        if changed is not None:
            given[changed] = given[changed].copy()
        _, ms = timed(lambda: OPERATIONS[call["op"]](given))
        times[call["op"]] = times.get(call["op"], 0) + ms
    return times


def main():
    photo, folder, runs, *sides = sys.argv[1:]
    width, height, small_width, small_height = map(int, sides)
    with open(f"{folder}/calls.json") as file:
        recorded = json.load(file)
    pictures = list(pictures_of(folder, recorded["stored"]))
    # One run more: the first unpacks libraries.
    times = [
        one_run(photo, recorded["calls"], pictures, (width, height), (small_width, small_height)) for _ in range(int(runs) + 1)
    ][1:]
    steps = {step: [run[step] for run in times] for step in times[0]}
    print(json.dumps({"version": cv2.__version__, "threads": cv2.getNumThreads(), "steps": steps}))


main()
