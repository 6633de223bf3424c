"""The network: a small U-Net of depthwise-separable convolutions.

Full-size output comes from a depth-to-space step, which costs a fraction of convolutions at full size.
The coarsest level sees far (5×5 kernels and the mean of the whole picture), so that a wide crown is one plant.
"""
import copy
import math

import torch
import torch.nn as nn
import torch.nn.functional as F

CLASSES = ['background', 'foliage', 'flower', 'pot', 'soil', 'support']  # soil with all that lies on it; labels, canes, ties


class ConvNormRelu(nn.Sequential):
    def __init__(self, i, o, k=3, stride=1, groups=1):
        super().__init__(nn.Conv2d(i, o, k, stride, k // 2, groups=groups, bias=False), nn.BatchNorm2d(o), nn.ReLU(True))


class Separable(nn.Module):
    """Depthwise, then pointwise; adds its input where the shapes allow."""

    def __init__(self, i, o, stride=1, k=3):
        super().__init__()
        self.spread = ConvNormRelu(i, i, k, stride, i)
        self.blend = ConvNormRelu(i, o, 1)
        self.keeps = stride == 1 and i == o

    def forward(self, x):
        y = self.blend(self.spread(x))
        return x + y if self.keeps else y


class FirstGuess(nn.Module):
    def __init__(self, widths=(24, 64, 128, 224, 352), deep=(5, 5)):
        super().__init__()
        w = widths
        self.stem = nn.Sequential(ConvNormRelu(3, w[0], 3, 2), Separable(w[0], w[0]))
        self.second = nn.Sequential(Separable(w[0], w[1], 2), Separable(w[1], w[1]))
        self.quarter = nn.Sequential(Separable(w[1], w[2], 2), *[Separable(w[2], w[2]) for _ in range(2)])
        self.eighth = nn.Sequential(Separable(w[2], w[3], 2), *[Separable(w[3], w[3]) for _ in range(deep[0] - 1)])
        self.deepest = nn.Sequential(Separable(w[3], w[4], 2), *[Separable(w[4], w[4], k=5) for _ in range(deep[1] - 1)])
        self.whole = nn.Conv2d(w[4], w[4], 1)
        self.up3 = nn.Sequential(Separable(w[4] + w[3], w[3]), Separable(w[3], w[3], k=5))
        self.up2 = nn.Sequential(Separable(w[3] + w[2], w[2]), Separable(w[2], w[2]))
        self.up1 = nn.Sequential(Separable(w[2] + w[1], w[1]), Separable(w[1], w[1]))
        last = w[0] * 3 // 2
        self.up0 = nn.Sequential(Separable(w[1] + w[0], last), Separable(last, last))
        self.head = nn.Conv2d(last, 4 * len(CLASSES), 1)

    def forward(self, x):
        """RGB 0..1 of any size in multiples of 32, to logits of the same size, one plane a class."""
        x = (x - 0.45) * 4
        a = self.stem(x)
        b = self.second(a)
        c = self.quarter(b)
        d = self.eighth(c)
        e = self.deepest(d)
        e = e + F.relu(self.whole(e.mean((2, 3), keepdim=True)))

        def up(t):
            return F.interpolate(t, scale_factor=2.0, mode='nearest')

        y = self.up3(torch.cat([up(e), d], 1))
        y = self.up2(torch.cat([up(y), c], 1))
        y = self.up1(torch.cat([up(y), b], 1))
        y = self.up0(torch.cat([up(y), a], 1))
        return F.pixel_shuffle(self.head(y), 2)


def started_from(weights, net):
    """Fits the weights of an earlier, smaller network of this file to `net`: blocks that it lacks start near
    doing nothing, planes that it lacks start as the last plane that it has."""
    mine = net.state_dict()
    for name, value in mine.items():
        old = weights.get(name)
        if old is None:
            if name.endswith('blend.1.weight'):
                value.fill_(0.1)
            if name.endswith('blend.1.bias'):
                value.fill_(0.02)
            continue
        if old.shape != value.shape:  # the head: four places of each plane in turn
            planes = old.shape[0] // 4
            extra = old[4 * (planes - 1):].repeat(len(CLASSES) - planes, *[1] * (old.ndim - 1))
            old = torch.cat([old, extra])
            if name.endswith('bias'):
                old[4 * (planes - 1):] -= math.log(1 + len(CLASSES) - planes)
        value.copy_(old)
    net.load_state_dict(mine)


class Probabilities(nn.Module):
    """What is exported: the network, its logits scaled by `calibrate.py`'s one number, softmax."""

    def __init__(self, net, scale=1.0):
        super().__init__()
        self.net = copy.deepcopy(net)
        with torch.no_grad():
            self.net.head.weight.mul_(scale)
            self.net.head.bias.mul_(scale)

    def forward(self, x):
        return self.net(x).softmax(1)
