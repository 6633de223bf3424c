// Small vectors, a seeded random stream and tileable noise: the ground everything else stands on.
#pragma once
#include <algorithm>
#include <cmath>
#include <iterator>
#include <cstdint>
#include <vector>

struct Vec {
  float x = 0, y = 0, z = 0;
};
inline Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline Vec operator*(Vec a, float s) { return {a.x * s, a.y * s, a.z * s}; }
inline Vec operator*(Vec a, Vec b) { return {a.x * b.x, a.y * b.y, a.z * b.z}; }
inline float dot(Vec a, Vec b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
inline Vec cross(Vec a, Vec b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline float length(Vec a) { return std::sqrt(dot(a, a)); }
inline Vec unit(Vec a) {
  float l = length(a);
  return l > 1e-9f ? a * (1 / l) : Vec{0, 1, 0};
}
inline Vec mix(Vec a, Vec b, float t) { return a + (b - a) * t; }
inline float mix(float a, float b, float t) { return a + (b - a) * t; }
inline float clamp01(float v) { return v < 0 ? 0 : v > 1 ? 1 : v; }
inline float smooth(float a, float b, float v) {
  float t = clamp01((v - a) / (b - a));
  return t * t * (3 - 2 * t);
}
inline float fract(float v) { return v - std::floor(v); }
/** A vector square to `d`. */
inline Vec anySide(Vec d) { return unit(std::fabs(d.y) < 0.9f ? cross({0, 1, 0}, d) : cross({1, 0, 0}, d)); }
/** `v` turned about the unit axis `k` by `a` radians (Rodrigues' formula). */
inline Vec turned(Vec v, Vec k, float a) {
  float c = std::cos(a), s = std::sin(a);
  return v * c + cross(k, v) * s + k * (dot(k, v) * (1 - c));
}

/** splitmix64: the same seed gives the same picture on every machine. */
struct Random {
  uint64_t s;
  /** The seed is stirred first: neighbouring seeds would else give the same stream, one step apart. */
  explicit Random(uint64_t seed) : s(seed) {
    uint64_t a = bits();
    s = a ^ (seed << 32);
    s = bits();
  }
  uint64_t bits() {
    uint64_t z = (s += 0x9E3779B97F4A7C15ull);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ull;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBull;
    return z ^ (z >> 31);
  }
  float unit01() { return float(bits() >> 40) * (1.0f / 16777216.0f); }
  float in(float a, float b) { return a + (b - a) * unit01(); }
  float logIn(float a, float b) { return std::exp(in(std::log(a), std::log(b))); }
  int pick(int n) { return int(unit01() * n); }
  int intIn(int a, int b) { return a + pick(b - a + 1); }
  bool chance(float p) { return unit01() < p; }
  float normal() { return std::sqrt(-2 * std::log(unit01() + 1e-9f)) * std::cos(6.2831853f * unit01()); }
  Vec direction() {
    float z = in(-1, 1), a = in(0, 6.2831853f), q = std::sqrt(1 - z * z);
    return {q * std::cos(a), z, q * std::sin(a)};
  }
};

inline Vec fromHsv(float h, float s, float v) {
  h = fract(h) * 6;
  int i = int(h);
  float f = h - i, p = v * (1 - s), q = v * (1 - s * f), t = v * (1 - s * (1 - f));
  switch (i) {
  case 0: return {v, t, p};
  case 1: return {q, v, p};
  case 2: return {p, v, t};
  case 3: return {p, q, v};
  case 4: return {t, p, v};
  default: return {v, p, q};
  }
}
/** sRGB-looking colours are easier to choose; light is added up in linear ones. */
inline Vec linear(Vec c) {
  auto f = [](float v) { return std::pow(std::max(v, 0.0f), 2.2f); };
  return {f(c.x), f(c.y), f(c.z)};
}

/** 256×256 tileable value noise of several octaves, 0..1, looked up bilinearly: one look is cheaper than one
 * hash octave. */
struct Noise {
  static constexpr int N = 256;
  std::vector<float> v;
  Noise(uint64_t seed, int firstCells, float fall) : v(N * N, 0.0f) {
    Random r(seed);
    float weight = 1, sum = 0;
    for (int cells = firstCells; cells <= N; cells *= 2, weight *= fall) {
      std::vector<float> g(cells * cells);
      for (auto &q : g) q = r.unit01();
      float step = float(cells) / N;
      for (int y = 0; y < N; y++)
        for (int x = 0; x < N; x++) {
          float fx = x * step, fy = y * step;
          int x0 = int(fx), y0 = int(fy), x1 = (x0 + 1) % cells, y1 = (y0 + 1) % cells;
          float tx = fx - x0, ty = fy - y0;
          tx = tx * tx * (3 - 2 * tx);
          ty = ty * ty * (3 - 2 * ty);
          v[y * N + x] += weight * mix(mix(g[y0 * cells + x0], g[y0 * cells + x1], tx),
                                       mix(g[y1 * cells + x0], g[y1 * cells + x1], tx), ty);
        }
      sum += weight;
    }
    for (auto &q : v) q = clamp01((q / sum - 0.5f) * 1.6f + 0.5f);
  }
  /** One tile spans 0..1 in both directions. */
  float at(float u, float w) const {
    float x = fract(u) * N, y = fract(w) * N;
    int x0 = int(x) & 255, y0 = int(y) & 255, x1 = (x0 + 1) & 255, y1 = (y0 + 1) & 255;
    float tx = x - std::floor(x), ty = y - std::floor(y);
    return mix(mix(v[y0 * N + x0], v[y0 * N + x1], tx), mix(v[y1 * N + x0], v[y1 * N + x1], tx), ty);
  }
};
inline const Noise &cloudy() {
  static const Noise n(11, 4, 0.55f);
  return n;
}
inline const Noise &grainy() {
  static const Noise n(12, 16, 0.85f);
  return n;
}
