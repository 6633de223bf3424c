// Which habits there are: each call draws one plant of one of them, with leaves that suit it.
#pragma once
#include "plant.h"

struct AnyPlant : Plant {
  /** A few shoots that have run far out of the crown, up, aside or down past the pot. */
  void runaways(const LeafKind &k) {
    float span = std::max(high, wide);
    for (int i = r.intIn(1, 4); i > 0; i--) {
      float a = r.in(0, 6.28f), far = wide * r.in(1.1f, 2.2f),
            end = r.chance(0.6f) ? -high * r.in(0, 0.9f) : high * r.in(0.6f, 1.4f);
      Vec out{std::cos(a), 0, std::sin(a)},
          root{out.x * 0.4f * wide, high * r.in(0.1f, 0.6f), out.z * 0.4f * wide};
      auto path =
          bentPath(root, out * far * 0.8f + Vec{0, high * r.in(0.4f, 1), 0}, out * far + Vec{0, end, 0}, 10);
      addTube(m, k.stem, path, taper(path.size(), 0.035f, 0.015f), 5, r.unit01());
      leafyStem(path, k, 0.1f, std::max(0.05f * span, k.size * r.in(0.3f, 0.9f)), r.in(0.6f, 1), true);
    }
  }
  /** A leafy dome with large heads of flowers standing out of it or above it: the show plant in bloom. */
  void heads(LeafKind k, float span) {
    if (k.form == 1 && r.chance(0.5f)) {
      m.surfaces[k.surface].pattern = 6; // the dark zone of a zonal leaf
      m.surfaces[k.surface].amount = 1;
    }
    float h = high * r.in(0.4f, 0.6f), stalk = span * r.logIn(0.02f, 0.35f);
    Vec heart{0, high - h, 0};
    flower.size = span * r.logIn(0.1f, 0.42f);
    flower.form = r.chance(0.6f) ? 1 : r.chance(0.5f) ? 3 : r.chance(0.5f) ? 4 : 0;
    flower.florets = r.intIn(16, 44);
    bloom = 0;
    bush(k, heart, wide, h, r.intIn(6, 20), r.in(0, 0.4f), r.in(0.1f, 0.8f), r.logIn(40, 500) * detail);
    float low = r.in(-0.2f, 0.6f), even = r.in(0.6f, 1);
    for (int i = int(r.logIn(2, 60) * detail); i >= 0; i--) {
      Vec d = r.direction();
      if (d.y < low) d.y = std::fabs(d.y);
      d = unit(d);
      Vec from = heart + Vec{d.x * wide, d.y * h, d.z * wide} * 0.75f + lean * (0.3f + d.y),
          to = heart + Vec{d.x * wide, d.y * h, d.z * wide} * r.in(even, 1.05f) + d * stalk +
               lean * (0.3f + d.y);
      addTube(m, flower.stem, bentPath(from, mix(from, to, 0.5f) + r.direction() * (0.1f * stalk), to, 4),
              taper(5, 0.02f, 0.016f), 4, 0.5f);
      addFlower(m, r, flower, to, d + Vec{0, 0.3f, 0.2f}, r.chance(0.15f) ? 0.4f : 1);
    }
  }
  /** Separate clouds of leaves on bare stems, with gaps between and a lean to one side. */
  void clumps(const LeafKind &k) {
    int bark = r.chance(0.5f) ? m.add(barkSurface(r)) : k.stem;
    float thick = r.logIn(0.03f, 0.14f);
    for (int i = r.intIn(2, 8); i > 0; i--) {
      float a = r.in(0, 6.28f), away = wide * std::sqrt(r.unit01()) * 0.8f;
      Vec at{std::cos(a) * away, high * r.in(0.25f, 0.9f), std::sin(a) * away};
      at = at + lean * (at.y / high);
      Vec root = ground(0.3f);
      auto p =
          bentPath(root, Vec{root.x, at.y * r.in(0.3f, 0.9f), root.z} + r.direction() * (0.1f * high), at, 8);
      addTube(m, bark, p, taper(p.size(), thick, thick * 0.4f), 6, r.unit01());
      float w = wide * r.in(0.15f, 0.45f), h = w * r.in(0.3f, 1);
      for (int j = int(r.logIn(30, 250) * detail); j > 0; j--) {
        Vec d = r.direction();
        addLeaf(m, r, k, at + Vec{d.x * w, d.y * h, d.z * w} * std::cbrt(r.unit01()), d + Vec{0, 0.4f, 0}, 1,
                detail);
        if (r.chance(0.04f)) blossom(at + Vec{d.x * w, std::fabs(d.y) * h, d.z * w}, d);
      }
    }
  }
  void grow(int habit) {
    float span = std::max(high, wide);
    auto leaf = [&](float a, float b, int form = -1) { return someLeaf(m, r, span * r.logIn(a, b), form); };
    switch (habit) {
    case 0: {
      LeafKind k = leaf(0.07f, 0.32f);
      float h = high * 0.55f;
      bush(k, Vec{0, high - h, 0}, wide, h, r.intIn(8, 30), r.in(0.1f, 0.6f), r.in(0.1f, 0.8f),
           r.logIn(30, 700) * detail);
      if (r.chance(0.14f)) runaways(k);
      break;
    }
    case 1: {
      LeafKind k = leaf(0.5f, 1, 0);
      k.petiole = r.chance(0.6f) ? 0 : r.in(0, 0.3f);
      k.slim = r.chance(0.5f) ? r.in(0.02f, 0.09f) : r.in(0.09f, 0.28f);
      k.bend = r.chance(0.4f) ? r.in(0, 0.3f) : r.in(0.3f, 2.2f);
      rosette(k, {0, soil, 0}, k.slim < 0.05f ? r.intIn(20, 70) : r.intIn(6, 26), r.in(0.35f, 1.05f),
              span * r.in(0.7f, 1));
      for (int i = r.intIn(0, 4); i > 0; i--)
        blossom(Vec{0, high * r.in(0.5f, 0.9f), 0}, r.direction() + Vec{0, 0.6f, 0}, 1.6f);
      break;
    }
    case 2: {
      LeafKind k = leaf(0.25f, 0.55f, r.pick(4));
      k.petiole = r.in(1.0f, 2.6f);
      k.size /= 1 + k.petiole * 0.5f;
      rosette(k, {0, soil, 0}, r.intIn(3, 22), r.in(0.6f, 1.05f), k.size);
      break;
    }
    case 3: tree(leaf(0.06f, 0.3f), r.in(0.3f, 0.7f), wide, false); break;
    case 4: tree(leaf(0.025f, 0.07f, r.chance(0.4f) ? 4 : r.pick(2)), r.in(0.3f, 0.7f), wide, true); break;
    case 5: {
      LeafKind k = leaf(0.3f, 0.4f, 2);
      if (r.chance(0.5f)) {
        int bark = m.add(barkSurface(r));
        Vec top{0, high * r.in(0.1f, 0.45f), 0};
        float w = r.in(0.08f, 0.5f);
        addTube(m, bark, trunk({0, soil, 0}, top, 0.02f), taper(9, w, w * 0.7f), 8, 0.5f);
        palm(k, top, r.intIn(8, 22));
      } else palm(k, {0, soil, 0}, r.intIn(8, 28));
      break;
    }
    case 6: {
      LeafKind k = leaf(0.08f, 0.25f);
      trailing(k, r.intIn(6, 22));
      float h = high * 0.4f;
      bush(k, {0, h * 0.6f, 0}, wide * 0.7f, h, r.intIn(4, 10), 0.1f, 0.3f, 40 * detail);
      break;
    }
    case 7: canes(leaf(0.3f, 0.4f, 0), r.intIn(1, 4)); break;
    case 8: cactus(); break;
    case 9: {
      LeafKind k = leaf(0.2f, 0.5f, r.chance(0.5f) ? 5 : 0);
      k.fold = 0.5f;
      k.petiole = 0;
      k.bend = r.in(-0.6f, 0.2f);
      if (k.form == 0) k.slim = r.in(0.2f, 0.45f);
      int n = r.intIn(1, 5);
      for (int i = 0; i < n; i++)
        rosette(k, n == 1 ? Vec{0, soil, 0} : ground(0.8f), r.intIn(12, 40), r.in(0.5f, 1),
                std::min(high, 1.4f * wide) * r.in(0.4f, 0.8f));
      break;
    }
    case 12: heads(leaf(0.14f, 0.36f, r.chance(0.75f) ? 1 : r.pick(4)), span); break;
    case 13: clumps(leaf(0.06f, 0.26f, r.chance(0.25f) ? 4 : -1)); break;
    case 10: bolting(leaf(0.25f, 0.5f, r.chance(0.6f) ? 0 : 1)); break;
    default: { // upright leafy stems, few branches
      LeafKind k = leaf(0.12f, 0.45f);
      int n = r.intIn(1, 9);
      for (int i = 0; i < n; i++) {
        Vec a = ground(0.6f),
            b = Vec{a.x + r.normal() * 0.25f * wide, high * r.in(0.6f, 1), a.z + r.normal() * 0.25f * wide} +
                lean;
        auto p = bentPath(a, mix(a, b, 0.5f) + r.direction() * (0.08f * high), b, 7);
        addTube(m, k.stem, p, taper(p.size(), r.in(0.03f, 0.07f), 0.02f), 6, r.unit01());
        leafyStem(p, k, r.in(0.0f, 0.5f), high * r.in(0.05f, 0.14f), 1, true);
      }
    }
    }
  }
};
