"""What a camera, a hand and a website do to a picture, done on the GPU to a batch of renders."""
import torch
import torch.nn.functional as F

FAR = ((256, 256), (256, 192), (192, 256))   # height, width of a look at the whole picture
NEAR = ((352, 352), (352, 256), (256, 352))  # and of a look zoomed on plant and pot


def uniform(low, high, *shape, device):
    return low + (high - low) * torch.rand(*shape, device=device)


def box_of(labels):
    """Centre x, y (−1..1) and width, height (share of the frame) of plant and pot, a picture each."""
    near = (labels > 0)
    n, h, w = near.shape
    out = torch.zeros(n, 4, device=labels.device)
    for k, size in ((0, w), (1, h)):
        seen = near.any(1 + k)
        first = seen.float().argmax(1)
        last = size - 1 - seen.flip(1).float().argmax(1)
        out[:, k] = (first + last + 1) / size - 1
        out[:, 2 + k] = (last + 1 - first) / size
    return out


def reframe(x, y, boxes, shape, zoomed):
    """Pictures of one shape (height, width), as a whole or zoomed on plant and pot as the second look is.
    Labels go by the nearest pixel."""
    n, dev = len(x), x.device
    u = lambda a, b: uniform(a, b, n, device=dev)
    h, w = shape
    longer = max(h, w)
    frame = torch.tensor([w / longer, h / longer], device=dev)  # the window's sides, the longer one 1
    centre, extent = boxes[:, :2], boxes[:, 2:]
    if zoomed:
        scale = ((extent / frame).amax(1) * u(0.95, 1.75)).clamp(0.3, 1.0)
        wander = 0.3 * scale[:, None] * frame
    else:
        scale = u(0.8, 1.03)
        wander = 0.15 * frame
    aspect = torch.exp(u(-0.17, 0.17))
    aside = (torch.rand(n, 2, device=dev) - 0.5) * wander
    wanted = aside + (centre if zoomed else centre * torch.where(frame < 1, 1.0, u(0, 1)[:, None]))
    limit = (1 - scale[:, None] * frame).clamp(min=0)
    wanted = torch.minimum(torch.maximum(wanted, -limit), limit)
    angle = u(-0.12, 0.12) * (torch.rand(n, device=dev) < 0.5)
    flip = (torch.rand(n, device=dev) < 0.5).float() * 2 - 1
    across, down = frame.tolist()
    theta = torch.zeros(n, 2, 3, device=dev)
    theta[:, 0, 0] = torch.cos(angle) * scale * aspect * flip * across
    theta[:, 0, 1] = -torch.sin(angle) * scale * down
    theta[:, 1, 0] = torch.sin(angle) * scale * flip * across
    theta[:, 1, 1] = torch.cos(angle) * scale / aspect * down
    theta[:, :, 2] = wanted
    grid = F.affine_grid(theta, (n, 3, h, w), align_corners=False)
    if not zoomed:  # shrinking: take means, as the look at a photo does
        x = F.interpolate(x, size=(round(x.shape[-2] * 0.7),) * 2, mode='bilinear', align_corners=False, antialias=True)
    x = F.grid_sample(x, grid, padding_mode='border', align_corners=False)
    y = F.grid_sample(y, grid, mode='nearest', padding_mode='border', align_corners=False)
    return x, y[:, 0].long()


def new_backgrounds(x, y):
    """Some plants stand before another render, moved aside, sharp or blurred, or before one plain colour."""
    n, dev = len(x), x.device
    alpha = F.avg_pool2d((y > 0).float()[:, None], 3, 1, 1)
    other = torch.roll(x, 1, 0).roll(x.shape[3] // 2, 3).flip(3)
    low = F.interpolate(F.interpolate(other, scale_factor=0.12, mode='bilinear', align_corners=False, antialias=True), size=x.shape[2:], mode='bilinear', align_corners=False)
    mid = F.interpolate(F.interpolate(other, scale_factor=0.35, mode='bilinear', align_corners=False, antialias=True), size=x.shape[2:], mode='bilinear', align_corners=False)
    grey = uniform(0.02, 1, n, 1, 1, 1, device=dev) + 0.04 * torch.randn(n, 3, 1, 1, device=dev)
    pick = torch.rand(n, 1, 1, 1, device=dev)
    behind = torch.where(pick < 0.06, low, torch.where(pick < 0.1, mid, other))
    x = torch.where(pick < 0.14, x * alpha + behind * (1 - alpha), x)
    return torch.where(pick > 0.95, x * alpha + grey.clamp(0, 1) * (1 - alpha), x)


def blurred(x, sigma):
    r = 3
    t = torch.arange(-r, r + 1, device=x.device, dtype=torch.float32)
    k = torch.exp(-0.5 * (t[None] / sigma[:, None]) ** 2)
    k = (k / k.sum(1, keepdim=True)).repeat_interleave(3, 0)
    n, _, h, w = x.shape
    x = x.reshape(1, n * 3, h, w)
    x = F.conv2d(F.pad(x, (r, r, 0, 0), mode='replicate'), k[:, None, None, :], groups=n * 3)
    return F.conv2d(F.pad(x, (0, 0, r, r), mode='replicate'), k[:, None, :, None], groups=n * 3).reshape(n, 3, h, w)


def light_and_lens(x):
    n, dev = len(x), x.device
    u = lambda a, b, c=1: uniform(a, b, n, c, 1, 1, device=dev)
    chance = lambda p: (torch.rand(n, 1, 1, 1, device=dev) < p).float()
    x = x.clamp(1e-4, 1) ** torch.exp(u(-0.45, 0.45))
    gain = torch.exp(u(-0.9, 0.7) * chance(0.5))                            # exposure 0.4 to 2 times
    x = x * gain * torch.exp(u(-0.16, 0.16, 3))
    grey = x.mean(1, keepdim=True)
    x = grey + (x - grey) * u(0.35, 1.6)
    mean = x.mean((1, 2, 3), keepdim=True)
    x = mean + (x - mean) * u(0.65, 1.35)
    slow = F.interpolate(torch.randn(n, 1, 4, 4, device=dev), size=x.shape[2:], mode='bicubic', align_corners=False)
    x = x * (1 + 0.15 * slow * u(0, 1)) + u(0, 0.12) * chance(0.25)          # uneven light, glare
    down, across = torch.meshgrid(torch.linspace(-1, 1, x.shape[2], device=dev), torch.linspace(-1, 1, x.shape[3], device=dev), indexing='ij')
    x = x * (1 - u(0, 0.35) * chance(0.25) * (across ** 2 + down ** 2))       # darker corners
    x = x + 0.05 * u(0, 1) * chance(0.5) * F.interpolate(torch.randn(n, 3, x.shape[2] // 4, x.shape[3] // 4, device=dev), size=x.shape[2:], mode='bilinear', align_corners=False)
    sigma = torch.where(torch.rand(n, device=dev) < 0.5, uniform(0.5, 2.0, n, device=dev), torch.full((n,), 0.15, device=dev))
    soft = blurred(x, sigma)
    sharpened = x + (x - blurred(x, torch.full((n,), 1.0, device=dev))) * 1.2
    x = torch.where(torch.rand(n, 1, 1, 1, device=dev) < 0.15, sharpened, soft)
    noise = torch.randn_like(x) * u(0, 0.05) * chance(0.6) * (0.4 + x.clamp(0, 1).sqrt())
    return (x + noise).clamp(0, 1)


def _dct():
    k = torch.arange(8)[:, None].float()
    i = torch.arange(8)[None].float()
    m = torch.cos((2 * i + 1) * k * torch.pi / 16) * 0.5
    m[0] *= 2 ** -0.5
    return m


DCT = _dct()
STEPS = torch.tensor([[16, 11, 10, 16, 24, 40, 51, 61], [12, 12, 14, 19, 26, 58, 60, 55], [14, 13, 16, 24, 40, 57, 69, 56], [14, 17, 22, 29, 51, 87, 80, 62],
                      [18, 22, 37, 56, 68, 109, 103, 77], [24, 35, 55, 64, 81, 104, 113, 92], [49, 64, 78, 87, 103, 121, 120, 101], [72, 92, 95, 98, 112, 100, 103, 99]]).float()
TO_YCC = torch.tensor([[0.299, 0.587, 0.114], [-0.1687, -0.3313, 0.5], [0.5, -0.4187, -0.0813]])


def jpeg(x):
    """The loss of JPEG (ITU-T T.81, luminance table of annex K for all planes), quality about 15 to 90, for a part of the batch."""
    n, dev = len(x), x.device
    m, ycc = DCT.to(dev), TO_YCC.to(dev)
    y = torch.einsum('ij,njhw->nihw', ycc, x) * 255
    b = y.unfold(2, 8, 8).unfold(3, 8, 8)
    c = m @ b @ m.T
    step = STEPS.to(dev) * torch.exp(uniform(-1.6, 1.1, n, 1, 1, 1, 1, 1, device=dev))
    b = m.T @ (torch.round(c / step) * step) @ m
    y = b.permute(0, 1, 2, 4, 3, 5).reshape_as(y) / 255
    z = torch.einsum('ij,njhw->nihw', torch.linalg.inv(ycc), y).clamp(0, 1)
    return torch.where(torch.rand(n, 1, 1, 1, device=dev) < 0.5, z, x)


@torch.no_grad()
def augment(pictures, boxes, shape, zoomed):
    """uint8 (n, 4, h, w) of R, G, B and label, to a float batch of `shape` and its labels."""
    x, y = reframe(pictures[:, :3].float() / 255, pictures[:, 3:].float(), boxes, shape, zoomed)
    return jpeg(light_and_lens(new_backgrounds(x, y))), y
