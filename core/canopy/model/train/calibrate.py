"""Fits one scale for all logits (temperature, Guo and others, 2017) on renders that no training run has seen.

    ./render-plants 900001 160 448 held.raw && python3 calibrate.py net.pt held.raw calibration.pt

Half of the renders are for fitting, half for judging; each is seen as by both looks. Needs no GPU.
"""
import sys

import numpy as np
import torch
import torch.nn.functional as F

from augment import FAR, NEAR, augment, box_of
from network import CLASSES, FirstGuess

SIDE, EACH, AT_ONCE = 448, 4000, 20  # px of a render; pixels drawn from it; renders seen at once
source, renders, target = sys.argv[1:4]
torch.manual_seed(7)
raw = torch.from_numpy(np.fromfile(renders, np.uint8)).view(-1, 4 * SIDE * SIDE)
colours = raw[:, :3 * SIDE * SIDE].view(-1, SIDE, SIDE, 3).permute(0, 3, 1, 2)
pictures = torch.cat([colours, raw[:, 3 * SIDE * SIDE:].view(-1, 1, SIDE, SIDE)], 1)
boxes = box_of(pictures[:, 3])
net = FirstGuess()
net.load_state_dict(torch.load(source, map_location='cpu'))
net.eval()

logits, labels, judging = [], [], []
with torch.no_grad():
    for zoomed in (False, True):
        for i in range(0, len(pictures), AT_ONCE):
            x, y = augment(pictures[i:i + AT_ONCE], boxes[i:i + AT_ONCE], (NEAR if zoomed else FAR)[0], zoomed)
            pick = torch.randint(0, y[0].numel(), (len(y), EACH))
            o = net(x).flatten(2).gather(2, pick[:, None].expand(-1, len(CLASSES), -1))
            logits.append(o.permute(0, 2, 1).reshape(-1, len(CLASSES)))
            labels.append(y.flatten(1).gather(1, pick).flatten())
            judging.append((torch.arange(len(y)) % 2 == 1).repeat_interleave(EACH))
logits, labels, judging = torch.cat(logits), torch.cat(labels), torch.cat(judging)

scale = torch.ones(1, requires_grad=True)
fit = torch.optim.LBFGS([scale], max_iter=40, line_search_fn='strong_wolfe')


def closure():
    fit.zero_grad()
    loss = F.cross_entropy(logits[~judging] * scale, labels[~judging])
    loss.backward()
    return loss


fit.step(closure)
scale = scale.detach()
torch.save({'scale': scale}, target)


def judged(factor):
    """Expected calibration error of "this is canopy" in ten bins, mean cross-entropy, and each bin's said→was."""
    o, y = logits[judging] * factor, labels[judging]
    p = o.softmax(1)
    canopy, so = p[:, 1] + p[:, 2], ((y == 1) | (y == 2)).float()
    bins = (canopy * 10).long().clamp(max=9)
    count, said, was = (torch.zeros(10).index_add_(0, bins, v) for v in (torch.ones_like(so), canopy, so))
    table = ' '.join(f'{s / n:.2f}→{w / n:.2f}' for s, w, n in zip(said, was, count.clamp(min=1)))
    return f'calibration error {(said - was).abs().sum() / len(y):.4f}, cross-entropy {F.cross_entropy(o, y):.4f}, said→was {table}'


print('scale', scale.item())
print('as trained', judged(1.0))
print('scaled    ', judged(scale))
