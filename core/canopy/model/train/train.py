"""Trains the first guess while the renderer fills the pool. No photograph is read.

    python3 train.py --seconds 480 --out DIR [--resume net.pt] [--seed 1]

Needs PyTorch with a GPU, and g++. Renders go through memory where there is room; the schedule goes by the clock.
Small pictures of whole scenes and larger ones zoomed on plant and pot take turns, as the two looks at a photo do.
"""
import argparse
import atexit
import copy
import glob
import os
import shutil
import subprocess
import tempfile
import threading
import time

import numpy as np
import torch
import torch.nn.functional as F

from augment import FAR, NEAR, augment, box_of
from network import CLASSES, FirstGuess, started_from

HERE = os.path.dirname(os.path.abspath(__file__))
RENDER_SIDE, SHARD = 448, 40
a = argparse.ArgumentParser()
a.add_argument('--seconds', type=float, default=480)
a.add_argument('--out', default='.')
a.add_argument('--resume')
a.add_argument('--seed', type=int, default=1)
a.add_argument('--batch', type=int, default=64)
a.add_argument('--lr', type=float, default=3e-3)
a.add_argument('--pool', type=int, default=45000)
a.add_argument('--start', type=int, default=2400)
a.add_argument('--workers', type=int, default=max(1, os.cpu_count() - 2))
a.add_argument('--compile', type=int, default=0)
a.add_argument('--warm-up', type=float, default=90, help='no further shape of picture is made ready after so many seconds')
a.add_argument('--teach-edge', type=float, default=1.5)
a.add_argument('--held-back', type=int, default=320)
args = a.parse_args()
dev, t0 = torch.device('cuda'), time.time()
os.makedirs(args.out, exist_ok=True)
torch.manual_seed(args.seed)
torch.backends.cudnn.benchmark = True  # half a minute to a minute for each shape of picture, on a fresh machine
torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
say = lambda *w: print(f'{time.time() - t0:6.1f}s', *w, flush=True)

# renderer: one process a core, shard after shard until the time is up
in_memory = os.path.isdir('/dev/shm') and shutil.disk_usage('/dev/shm').free > 4e9
store = tempfile.mkdtemp(prefix='renders-', dir='/dev/shm' if in_memory else None)
subprocess.run(['g++', '-O3', '-march=native', '-ffast-math', '-std=c++17', f'{HERE}/../render/main.cpp', '-o', f'{store}/render-plants'], check=True)
say('renderer compiled;', vars(args))
loop = f'i=0; while [ ! -e {store}/stop ]; do {store}/render-plants $(({args.seed} * 1000000 + $W * 5000 + i)) {SHARD} {RENDER_SIDE} {store}/$W-$i.raw; i=$((i+1)); done'
atexit.register(lambda: os.path.isdir(store) and open(f'{store}/stop', 'w').close())
workers = [subprocess.Popen(['nice', '-n', '19', 'bash', '-c', loop], env={**os.environ, 'W': str(w)}, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) for w in range(args.workers)]

pool = torch.empty(args.pool, 4, RENDER_SIDE, RENDER_SIDE, dtype=torch.uint8, device=dev)
boxes = torch.zeros(args.pool, 4, device=dev)
filled = 0


def fill():
    global filled
    stream = torch.cuda.Stream()
    with torch.cuda.stream(stream):
        while filled + SHARD <= args.pool and not os.path.exists(f'{store}/stop'):
            ready = glob.glob(f'{store}/*.raw')
            if not ready:
                time.sleep(0.1)
            for path in ready:
                if filled + SHARD > args.pool:
                    break
                raw = torch.from_numpy(np.fromfile(path, np.uint8)).to(dev).view(SHARD, -1)
                os.remove(path)
                area = RENDER_SIDE * RENDER_SIDE
                part = pool[filled:filled + SHARD]
                part[:, :3] = raw[:, :3 * area].view(SHARD, RENDER_SIDE, RENDER_SIDE, 3).permute(0, 3, 1, 2)
                part[:, 3] = raw[:, 3 * area:].view(SHARD, RENDER_SIDE, RENDER_SIDE)
                boxes[filled:filled + SHARD] = box_of(part[:, 3])
                stream.synchronize()
                filled += SHARD
    open(f'{store}/stop', 'w').close()


threading.Thread(target=fill, daemon=True).start()

net = FirstGuess().to(dev).to(memory_format=torch.channels_last)
if args.resume:
    started_from(torch.load(args.resume, map_location=dev), net)
say('parameters', sum(p.numel() for p in net.parameters()) / 1e6, 'M')
average = copy.deepcopy(net).eval()
run = torch.compile(net, dynamic=False) if args.compile else net  # pays on long runs only: a minute a shape
opt = torch.optim.AdamW([{'params': [p for p in net.parameters() if p.ndim > 1], 'weight_decay': 2e-2}, {'params': [p for p in net.parameters() if p.ndim <= 1], 'weight_decay': 0}], lr=args.lr)
CLASS_WEIGHT = torch.tensor([1.0, 1.3, 1.2, 1.4, 2.5], device=dev)
MERGED = torch.tensor([0, 1, 1, 2, 3, 4], device=dev)  # leaf and flower are one canopy


def loss_of(logits, y):
    """Cross-entropy (heavier near the canopy's edge) + Dice of canopy, pot and soil + leaf against flower."""
    merged = torch.cat([logits[:, :1], torch.logsumexp(logits[:, 1:3], 1, keepdim=True), logits[:, 3:]], 1)
    target = MERGED[y]
    canopy = (target == 1).float()[:, None]
    edge = F.max_pool2d(canopy, 5, 1, 2) + F.max_pool2d(-canopy, 5, 1, 2)
    ce = F.cross_entropy(merged, target, weight=CLASS_WEIGHT, reduction='none')
    loss = (ce * (1 + args.teach_edge * edge[:, 0])).mean()
    p = merged.softmax(1)
    for k, share in ((1, 1.0), (2, 0.5), (3, 0.15)):
        t = (target == k).float()
        dice = 1 - (2 * (p[:, k] * t).sum((1, 2)) + 50) / (p[:, k].sum((1, 2)) + t.sum((1, 2)) + 50)
        loss = loss + share * dice.mean()
    flower = F.cross_entropy(logits[:, 1:3], (y - 1).clamp(0, 1), reduction='none')
    return loss + 0.3 * (flower * canopy[:, 0]).sum() / (canopy.sum() + 1)


def held_back(zoomed):
    """The pictures never trained on, with their labels, as one of the two looks sees them; the same every time."""
    with torch.random.fork_rng(devices=[0]):
        torch.manual_seed(7)
        for i in range(0, args.held_back, 80):
            yield augment(pool[i:i + 80], boxes[i:i + 80], (NEAR if zoomed else FAR)[0], zoomed)


@torch.no_grad()
def logits_of(x):
    with torch.autocast('cuda', dtype=torch.bfloat16):
        return average(x.contiguous(memory_format=torch.channels_last)).float()


def check():
    found = []
    for zoomed in (False, True):
        scores = []
        for x, y in held_back(zoomed):
            k, y = MERGED[logits_of(x).argmax(1)], MERGED[y]
            iou = [((k == c) & (y == c)).sum((1, 2)) / ((k == c) | (y == c)).sum((1, 2)).clamp(min=1) for c in (1, 2, 3, 4)]
            there = [(y == c).sum((1, 2)) >= 30 for c in (1, 2, 3, 4)]  # what hardly shows is not scored
            scores.append(torch.where(torch.stack(there, 1), torch.stack(iou, 1), torch.nan))
        s = torch.cat(scores)
        found.append(('near: ' if zoomed else 'far: ') + ', '.join(f'{n} {s[:, i].nanmedian():.3f} ({s[:, i].nanquantile(0.1):.3f})' for i, n in enumerate(['canopy', 'pot', 'soil', 'support'])))
    return 'held-back renders, IoU median (10th percentile), ' + '; '.join(found)


def keep_weights():
    """Written aside and moved into place, so that a reader never meets half a file."""
    torch.save(average.state_dict(), f'{args.out}/net.pt.part')
    os.replace(f'{args.out}/net.pt.part', f'{args.out}/net.pt')


def step(pictures, bx, shape, zoomed, lr, keep):
    for g in opt.param_groups:
        g['lr'] = lr
    x, y = augment(pictures, bx, shape, zoomed)
    with torch.autocast('cuda', dtype=torch.bfloat16):
        o = run(x.contiguous(memory_format=torch.channels_last))
    loss = loss_of(o.float(), y)
    opt.zero_grad(set_to_none=True)
    loss.backward()
    torch.nn.utils.clip_grad_norm_(net.parameters(), 2.0)
    opt.step()
    with torch.no_grad():
        torch._foreach_lerp_(list(average.parameters()), list(net.parameters()), 1 - keep)
        for m, n in zip(average.buffers(), net.buffers()):
            if m.dtype.is_floating_point:
                m.lerp_(n, 1 - keep)
    return loss.detach()


looks = {False: [], True: []}
before = copy.deepcopy(net.state_dict())
for k in range(max(len(FAR), len(NEAR))):  # compile shape by shape while the first pictures are drawn
    for zoomed, known in ((True, NEAR), (False, FAR)):
        if k >= len(known) or (k > 0 and time.time() - t0 > args.warm_up):
            continue
        blank = torch.randint(0, 255, (args.batch, 4, RENDER_SIDE, RENDER_SIDE), dtype=torch.uint8, device=dev)
        blank[:, 3] %= len(CLASSES)
        step(blank, torch.ones(args.batch, 4, device=dev) * 0.5, known[k], zoomed, 0.0, 1.0)
        torch.cuda.synchronize()
        looks[zoomed].append(known[k])
        say('ready for', known[k])
net.load_state_dict(before)  # as they were
average.load_state_dict(before)
opt.state.clear()
while filled < args.start:
    time.sleep(0.2)
say('pool', filled)

begun, steps, total = time.time(), 0, torch.zeros((), device=dev)
deadline, last = t0 + args.seconds, time.time()
shapes = np.random.default_rng(args.seed)
peak = 0.12 if not args.resume else 0.05
while True:
    now = time.time()
    t = (now - begun) / (deadline - begun)
    if t >= 1:
        break
    lr = args.lr * (t / peak if t < peak else 0.5 * (1 + np.cos(np.pi * (t - peak) / (1 - peak)))) + 1e-6
    zoomed = steps % 2 == 1
    shape = looks[zoomed][shapes.integers(len(looks[zoomed]))]
    index = torch.randint(args.held_back, filled, (args.batch,), device=dev)
    total += step(pool[index], boxes[index], shape, zoomed, lr, min(0.999, 1 - 1 / (steps + 10)))
    steps += 1
    if now - last > 60:
        say(f'step {steps} loss {total.item() / steps:.4f} pool {filled}', check())
        keep_weights()
        last = now
open(f'{store}/stop', 'w').close()
say(f'end: {steps} steps of {args.batch}, pool {filled}', check())
keep_weights()
for w in workers:
    w.wait()
shutil.rmtree(store)
