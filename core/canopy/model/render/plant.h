// Habits of growth. A plant stands in a pot whose rim has radius 1 and lies at height 0; everything is in rim
// radii.
#pragma once
#include "flower.h"

struct Plant {
  Mesh &m;
  Random &r;
  float high, wide;    // how tall above the rim, how far to each side
  float inner = 0.8f;  // radius of the soil
  float soil = -0.12f; // its height
  float detail = 1;    // below 1 for neighbours far behind
  FlowerKind flower;
  float bloom = 0;
  Vec lean{0, 0, 0};

  Vec ground(float spread) {
    float a = r.in(0, 6.28f), q = inner * spread * std::sqrt(r.unit01());
    return {q * std::cos(a), soil, q * std::sin(a)};
  }
  void blossom(Vec at, Vec d, float scale = 1) {
    if (!r.chance(bloom)) return;
    float stalk = flower.size * r.in(0.2f, 1.2f);
    Vec tip = at + unit(d + Vec{0, 0.6f, 0}) * stalk;
    addStick(m, flower.stem, at, tip, 0.014f, 0.012f, 4, 0.5f);
    addFlower(m, r, flower, tip, d + Vec{0, 0.4f, 0.3f}, scale);
  }
  /** Leaves along a stem, a spiral of 137.5° from node to node. */
  void leafyStem(const std::vector<Vec> &path, const LeafKind &k, float from, float spacing, float scale,
                 bool flowers) {
    float along = 0, total = 0, turn = r.in(0, 6.28f);
    for (size_t i = 1; i < path.size(); i++) total += length(path[i] - path[i - 1]);
    float next = total * from;
    for (size_t i = 1; i < path.size(); i++) {
      float len = length(path[i] - path[i - 1]);
      Vec d = unit(path[i] - path[i - 1]);
      while (next < along + len) {
        Vec at = mix(path[i - 1], path[i], (next - along) / len);
        turn += 2.39996f + r.normal() * 0.2f;
        Vec q = turned(anySide(d), d, turn);
        float t = next / total;
        addLeaf(m, r, k, at, q + d * r.in(0.1f, 0.9f) + Vec{0, 0.25f, 0}, scale * mix(1.1f, 0.65f, t),
                detail);
        if (flowers && r.chance(0.06f)) blossom(at, q + d);
        next += spacing * r.in(0.6f, 1.4f);
      }
      along += len;
    }
    Vec d = unit(path.back() - path[path.size() - 2]);
    for (int i = 0; i < 3; i++)
      addLeaf(m, r, k, path.back(), d + r.direction() * 0.6f, scale * r.in(0.4f, 0.8f), detail);
    if (flowers) blossom(path.back(), d);
  }
  std::vector<float> taper(size_t n, float a, float b) {
    std::vector<float> w;
    for (size_t i = 0; i < n; i++) w.push_back(mix(a, b, float(i) / (n - 1)));
    return w;
  }

  /** Many stems fanning out to an ellipsoid: the bushy pot plant. `hang` lets the outer ones fall below the
   * rim. */
  void bush(const LeafKind &k, Vec heart, float w, float h, int stems, float bare, float hang, float fill) {
    for (int i = 0; i < stems; i++) {
      Vec d = r.direction();
      if (d.y < -hang) d.y = -d.y;
      float push = r.in(0.75f, 1.05f);
      Vec tip = heart + Vec{d.x * w, d.y * h, d.z * w} * push + lean * (0.3f + d.y);
      Vec root = heart.y > high * 0.3f ? heart + Vec{0, -h * 0.5f, 0} * r.in(0.3f, 1) : ground(0.5f);
      Vec via = mix(root, tip, 0.45f) + Vec{0, 0.25f * length(tip - root), 0} + r.direction() * (0.1f * w);
      auto path = bentPath(root, via, tip, 6);
      int q = m.add(m.surfaces[k.stem]);
      float thick = r.in(0.018f, 0.05f);
      addTube(m, q, path, taper(path.size(), thick * 1.4f, thick * 0.7f), 5, r.unit01());
      leafyStem(path, k, bare, std::max(0.06f, k.size * r.in(0.25f, 0.6f)), 1, true);
    }
    for (int i = 0; i < fill; i++) {
      Vec d = r.direction();
      if (d.y < -hang) d.y = -d.y;
      float q = r.in(0.55f, 1.0f);
      addLeaf(m, r, k,
              heart + Vec{d.x * w, d.y * h, d.z * w} * q + lean * (0.3f + d.y) -
                  d * (k.size * k.petiole * 0.5f),
              d + Vec{0, 0.3f, 0}, r.in(0.7f, 1.1f), detail);
      if (q > 0.85f && d.y > -0.1f) {
        float keep = bloom;
        bloom *= 0.5f;
        blossom(heart + Vec{d.x * w, d.y * h, d.z * w} * q, d);
        bloom = keep;
      }
    }
  }
  /** Leaves straight from the soil: strap, sword, spear and long-stalked ones. */
  void rosette(LeafKind k, Vec heart, int leaves, float upright, float len) {
    float turn = r.in(0, 6.28f);
    Random &q = r;
    for (int i = 0; i < leaves; i++) {
      turn += 2.39996f;
      float t = (i + 0.5f) / leaves, rise = mix(upright * 0.25f, upright, t) * 1.5f + q.normal() * 0.12f;
      Vec d{std::cos(turn) * std::cos(rise), std::sin(rise), std::sin(turn) * std::cos(rise)};
      LeafKind one = k;
      one.petiole = k.petiole;
      addLeaf(m, r, one, heart + Vec{d.x, 0, d.z} * (0.15f * inner), d + lean * 0.3f,
              len / k.size * mix(0.7f, 1.0f, q.unit01()), detail);
    }
  }
  void palm(LeafKind k, Vec top, int fronds) {
    k.form = 2;
    k.leaflets = r.intIn(12, 26);
    k.slim = r.in(0.04f, 0.12f);
    k.bend = r.in(0.4f, 1.4f);
    k.petiole = r.in(0.1f, 0.5f);
    k.teeth = 0;
    rosette(k, top, fronds, r.in(0.7f, 1.05f), high * 0.65f);
  }
  std::vector<Vec> trunk(Vec from, Vec to, float wobble) {
    std::vector<Vec> p{from};
    for (int i = 1; i < 8; i++)
      p.push_back(mix(from, to, i / 8.0f) + Vec{r.normal(), r.normal() * 0.3f, r.normal()} * wobble);
    p.push_back(to);
    return p;
  }
  /** Trunk with a crown: standards, small trees, braids. */
  void tree(const LeafKind &k, float trunkShare, float crownWide, bool pads) {
    int bark = m.add(barkSurface(r));
    float thick = r.logIn(0.03f, pads ? 0.35f : 0.16f);
    Vec base = ground(0.15f), top = Vec{base.x, high * trunkShare, base.z} + lean * trunkShare +
                                    Vec{r.normal() * 0.15f, 0, r.normal() * 0.15f};
    if (r.chance(0.2f))
      for (int i = 0; i < 3; i++) { // a braid
        std::vector<Vec> p;
        for (int j = 0; j <= 14; j++) {
          float a = j * 0.9f + i * 2.094f;
          p.push_back(mix(base, top, j / 14.0f) + Vec{std::cos(a), 0, std::sin(a)} * (thick * 1.1f));
        }
        addTube(m, bark, p, taper(p.size(), thick, thick * 0.7f), 6, r.unit01());
      }
    else {
      auto p = trunk(base, top, pads ? 0.16f * high * 0.4f : 0.03f * high);
      addTube(m, bark, p, taper(p.size(), thick * r.in(1, 2), thick * 0.6f), 8, r.unit01());
    }
    if (!pads) {
      float h = high * (1 - trunkShare) * 0.5f;
      bush(k, Vec{top.x, high * trunkShare + h * 0.8f, top.z}, crownWide, h, r.intIn(8, 22), r.in(0.1f, 0.4f),
           r.in(0.2f, 1), r.logIn(40, 700) * detail);
      return;
    }
    int n = r.intIn(3, 9);
    for (int i = 0; i < n; i++) { // pads of small leaves, the bonsai way
      float t = i / float(n), a = i * 2.4f + r.in(-0.5f, 0.5f),
            away = crownWide * (1 - t * 0.75f) * r.in(0.5f, 1);
      Vec at{std::cos(a) * away, high * mix(0.3f, 1.0f, t), std::sin(a) * away};
      at = at + lean * t;
      auto p = bentPath(mix(base, top, clamp01(0.4f + t * 0.6f)), mix(top, at, 0.5f), at, 4);
      addTube(m, bark, p, taper(p.size(), thick * 0.5f, thick * 0.2f), 5, r.unit01());
      float w = crownWide * r.in(0.3f, 0.6f), h = w * r.in(0.25f, 0.6f);
      int leaves = int(r.in(60, 200) * detail);
      for (int j = 0; j < leaves; j++) {
        Vec d = r.direction();
        d.y = std::fabs(d.y) * 1.2f - 0.2f;
        addLeaf(m, r, k, at + Vec{d.x * w, d.y * h, d.z * w} * std::cbrt(r.unit01()), d + Vec{0, 0.5f, 0}, 1,
                detail);
      }
    }
  }
  void trailing(const LeafKind &k, int stems) {
    for (int i = 0; i < stems; i++) {
      float a = r.in(0, 6.28f), far = wide * r.in(0.5f, 1.1f), fall = high * r.in(-0.3f, 1.2f);
      Vec out{std::cos(a), 0, std::sin(a)};
      Vec root = ground(0.6f), via = out * (1.1f + far * 0.4f) + Vec{0, r.in(0.3f, 1.2f), 0},
          tip = out * far * 1.1f + Vec{0, -fall, 0};
      auto path = bentPath(root, via, tip, 8);
      addTube(m, k.stem, path, taper(path.size(), 0.03f, 0.015f), 4, r.unit01());
      leafyStem(path, k, 0.1f, k.size * r.in(0.3f, 0.8f), 1, true);
    }
  }
  void canes(LeafKind k, int n) {
    int bark = m.add(barkSurface(r));
    k.form = 0;
    k.slim = r.in(0.03f, 0.12f);
    k.bend = r.in(0.2f, 1.4f);
    k.teeth = 0;
    k.petiole = 0;
    m.surfaces[k.surface].look = Look::Blade;
    for (int i = 0; i < n; i++) {
      Vec a = ground(0.5f), b = a + Vec{r.normal() * 0.2f, high * r.in(0.25f, 0.75f), r.normal() * 0.2f};
      float w = r.in(0.05f, 0.2f);
      addTube(m, bark, trunk(a, b, 0.02f), taper(9, w, w * 0.8f), 7, r.unit01());
      rosette(k, b, r.intIn(14, 34), r.in(0.6f, 1.0f), high * r.in(0.25f, 0.5f));
    }
  }
  void cactus() {
    Surface s = leafSurface(r, fromHsv(r.in(0.2f, 0.42f), r.in(0.15f, 0.6f), r.in(0.2f, 0.6f)));
    s.look = Look::Cactus;
    s.pattern = r.intIn(6, 16);
    s.letsThrough = 0;
    int body = m.add(s);
    Surface spine = s;
    spine.look = Look::Plain;
    spine.colour = linear(fromHsv(0.1f, r.in(0.05f, 0.4f), r.in(0.5f, 1)));
    int spines = m.add(spine);
    int n = r.chance(0.5f) ? 1 : r.intIn(2, 7);
    for (int i = 0; i < n; i++) {
      Vec at = n == 1 ? Vec{0, soil, 0} : ground(0.8f);
      float h = high * r.in(0.5f, 1) * 0.6f,
            w = std::min(h * r.in(0.3f, 1), inner * 0.9f) / (n > 1 ? 1.6f : 1);
      Vec axis = unit(Vec{0, 1, 0} + r.direction() * 0.15f), mid = at + axis * (h * 0.9f);
      addBlob(m, body, mid, {w, h, w * r.in(0.5f, 1)}, axis, 24, r.unit01());
      if (r.chance(0.7f))
        for (int j = 0; j < 160; j++) {
          Vec d = r.direction(), p = mid + Vec{d.x * w, d.y * h, d.z * w};
          addStick(m, spines, p, p + unit(d + r.direction() * 0.5f) * r.in(0.05f, 0.16f), 0.006f, 0.002f, 3,
                   0.5f);
        }
      blossom(mid + axis * h, axis);
    }
  }
  /** A few leaves low down and tall thin flowering stalks: bolting seedlings, young plants. */
  void bolting(const LeafKind &k) {
    rosette(k, {0, soil, 0}, r.intIn(3, 12), r.in(0.3f, 0.9f), wide * r.in(0.5f, 1));
    int n = r.intIn(0, 6);
    for (int i = 0; i < n; i++) {
      Vec a = ground(0.2f), b = Vec{r.normal() * 0.4f * wide, high * r.in(0.6f, 1), r.normal() * 0.4f * wide};
      auto p = bentPath(a, mix(a, b, 0.5f) + r.direction() * 0.2f, b, 8);
      addTube(m, k.stem, p, taper(p.size(), 0.04f, 0.02f), 5, 0.5f);
      leafyStem(p, k, 0.1f, high * 0.12f, r.in(0.3f, 0.7f), false);
      for (int j = 0; j < 14; j++) {
        float keep = bloom;
        bloom = 0.9f;
        Vec at = mix(p[6], b, r.unit01());
        blossom(at, r.direction() + Vec{0, 0.3f, 0}, 0.5f);
        bloom = keep;
      }
    }
  }
};
