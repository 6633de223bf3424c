// Renders labelled pictures of invented pot plants: raw records of side² × (R, G, B) bytes, then side² label
// bytes.
//   g++ -O3 -march=native -ffast-math -std=c++17 main.cpp -o render-plants
//   ./render-plants SEED COUNT SIDE OUT.raw
// The same seed gives the same scenes on every machine (pixels may differ in the last bit with the compiler).
#include <cstdio>
#include <cstdlib>
#include <string>
#include "scene.h"

struct Picture {
  int side;
  std::vector<Vec> colour;
  std::vector<uint8_t> label;
};

static Vec lit(const Scene &s, const Painted &k, Vec p, Vec eye, const Surface *surface, Vec flatNormal,
               Random &r) {
  Vec sum = k.colour * s.bounce * (0.6f - 0.4f * k.n.y);
  float through = surface ? surface->letsThrough : 0, sharp = surface ? surface->sharpness : 20;
  Vec glint;
  for (auto &l : s.lights) {
    float d = dot(k.n, l.d);
    bool front = d > 0;
    if (!front && through <= 0) continue;
    float seen = l.reaches(p + flatNormal * (0.004f * l.extent), r.in(-1.3f, 1.3f), r.in(-1.3f, 1.3f));
    if (seen == 0) continue;
    if (front) {
      sum = sum + k.colour * l.colour * d;
      if (k.gloss > 0.02f) {
        float h = std::max(0.0f, dot(k.n, unit(l.d + eye)));
        glint = glint + l.colour * (k.gloss * 0.12f * (sharp + 8) / 12 * std::pow(h, sharp));
      }
    } else sum = sum + k.colour * Vec{1.25f, 1.2f, 0.6f} * l.colour * (-d * through);
  }
  float edge = std::pow(1 - clamp01(dot(k.n, eye)), 4.0f),
        up = clamp01(0.5f + 0.5f * (2 * dot(k.n, eye) * k.n.y - eye.y));
  return sum + glint + s.sky * (k.gloss * (0.03f + 0.35f * edge) * up);
}

/** Blurs what lies behind the subject without letting the subject's colour leak into it. */
static void blurBehind(std::vector<Vec> &c, std::vector<float> &w, int n, int reach) {
  std::vector<Vec> t(c.size());
  std::vector<float> u(c.size());
  for (int pass = 0; pass < 4; pass++) {
    for (int y = 0; y < n; y++) {
      Vec sum;
      float ws = 0;
      for (int x = 0; x < n + reach; x++) {
        if (x < n) {
          sum = sum + c[size_t(y) * n + x];
          ws += w[size_t(y) * n + x];
        }
        if (x - 2 * reach - 1 >= 0) {
          sum = sum - c[size_t(y) * n + x - 2 * reach - 1];
          ws -= w[size_t(y) * n + x - 2 * reach - 1];
        }
        int to = x - reach;
        if (to >= 0) {
          t[size_t(to) * n + y] = sum;
          u[size_t(to) * n + y] = ws;
        }
      }
    }
    std::swap(c, t);
    std::swap(w, u);
    float inv = 1.0f / (2 * reach + 1);
    for (size_t i = 0; i < c.size(); i++) {
      c[i] = c[i] * inv;
      w[i] *= inv;
    }
  }
}

static Picture render(Scene &s, Random &r, int side) {
  int n = side * 2;
  std::vector<Sample> seen;
  std::vector<Vec> screen;
  rasterise(s.mesh, s.camera, n, seen, screen);
  Picture out{side, std::vector<Vec>(size_t(side) * side), std::vector<uint8_t>(size_t(side) * side)};
  std::vector<Vec> far(out.colour.size()), near(out.colour.size());
  std::vector<float> cover(out.colour.size()), depth(out.colour.size());
  for (int y = 0; y < side; y++)
    for (int x = 0; x < side; x++) {
      Vec front, back;
      int votes[LabelCount] = {}, fronts = 0;
      float z = 0;
      auto sampleAt = [&](int k) -> const Sample & {
        return seen[size_t(y * 2 + (k >> 1)) * n + x * 2 + (k & 1)];
      };
      int first = sampleAt(0).triangle;
      bool even =
          first == sampleAt(1).triangle && first == sampleAt(2).triangle && first == sampleAt(3).triangle;
      int every = even ? 3 : 1,
          counts = even ? 2 : 1; // inside one triangle two samples on a slant tell enough
      for (int k = 0; k < 4; k += every) {
        int sx = x * 2 + (k & 1), sy = y * 2 + (k >> 1);
        const Sample &q = sampleAt(k);
        float fx = (sx + 0.5f) / n, fy = (sy + 0.5f) / n;
        Vec ray = s.camera.ray(fx, fy);
        Label label = Background;
        Vec c;
        float far = 1e9f;
        bool subject = false;
        auto met = s.room.meet(s.camera.at, ray, fx, fy);
        float meshFar = q.triangle >= 0 ? q.z / std::max(0.05f, dot(ray, s.camera.forward)) : 1e9f;
        if (q.triangle >= 0 && meshFar < met.z) {
          Point p = pointSeen(s.mesh, screen, q, sx + 0.5f, sy + 0.5f);
          Vec flatNormal = dot(p.n, ray) > 0 ? p.n * -1 : p.n;
          Painted k2 = paint(p, ray * -1);
          c = lit(s, k2, p.p, ray * -1, p.s, flatNormal, r);
          label = p.s->label;
          subject = label != Background;
          far = q.z;
        } else if (met.lit) {
          c = lit(s, {met.colour, met.n, 0.02f}, met.p, ray * -1, nullptr, met.n, r);
          far = met.z;
        } else {
          c = met.colour;
          far = met.z;
        }
        votes[label] += counts;
        if (subject) {
          front = front + c * float(counts);
          fronts += counts;
        } else {
          back = back + c * float(counts);
          z += counts * std::min(far, 1e4f);
        }
      }
      size_t i = size_t(y) * side + x;
      int plants = votes[Foliage] + votes[Flower],
          most = std::max({plants, votes[Background], votes[Pot], votes[Soil], votes[Support]});
      int best = plants == most           ? (votes[Flower] > votes[Foliage] ? Flower : Foliage)
                 : votes[Support] == most ? Support
                 : votes[Pot] == most     ? Pot
                 : votes[Soil] == most    ? Soil
                                          : Background;
      out.label[i] = uint8_t(best);
      near[i] = front * 0.25f;
      far[i] = back * 0.25f;
      cover[i] = fronts * 0.25f;
      depth[i] = fronts < 4 ? z / (4 - fronts) : 0;
    }
  if (s.blurFar > 0) { // out of focus behind the plant
    auto c = far;
    std::vector<float> w(cover.size());
    for (size_t i = 0; i < w.size(); i++) w[i] = 1 - cover[i];
    int reach = std::max(1, int(s.blurFar * side / 448));
    blurBehind(c, w, side, reach);
    for (size_t i = 0; i < w.size(); i++)
      if (cover[i] < 1 && w[i] > 1e-4f) {
        float t = smooth(0.08f, 0.5f, std::fabs(depth[i] - s.focus) / s.focus);
        far[i] = mix(far[i], c[i] * (1 / w[i]) * (1 - cover[i]), t);
      }
  }
  float curve = r.in(0, 0.35f), shoulder = r.in(0, 0.25f);
  for (size_t i = 0; i < out.colour.size(); i++) {
    Vec c = (near[i] + far[i]) * s.exposure;
    auto tone = [&](float v) {
      v = v / (1 + shoulder * v);
      v = std::pow(clamp01(v), 1 / 2.2f);
      return mix(v, v * v * (3 - 2 * v), curve);
    };
    out.colour[i] = {tone(c.x), tone(c.y), tone(c.z)};
  }
  return out;
}

int main(int argc, char **argv) {
  if (argc != 5) {
    std::fprintf(stderr, "render-plants SEED COUNT SIDE OUT.raw\n");
    return 2;
  }
  uint64_t seed = std::strtoull(argv[1], nullptr, 10);
  int count = std::atoi(argv[2]), side = std::atoi(argv[3]);
  std::string path = argv[4];
  FILE *f = std::fopen((path + ".part").c_str(), "wb");
  if (!f) {
    std::perror(argv[4]);
    return 1;
  }
  std::vector<std::vector<Vec>> older;
  for (int i = 0; i < count; i++) {
    Picture p;
    int plant = 0; // a picture whose plant fell out of the frame or behind something is drawn again
    for (int attempt = 0; attempt < 8 && plant < side * side / 600; attempt++) {
      Random r((seed * 1000003 + i) * 8 + attempt);
      Scene s;
      compose(s, r, older);
      p = render(s, r, side);
      plant = 0;
      for (auto l : p.label) plant += l == Foliage || l == Flower;
    }
    std::vector<uint8_t> bytes;
    bytes.reserve(size_t(side) * side * 4);
    for (auto &c : p.colour)
      for (float v : {c.x, c.y, c.z}) bytes.push_back(uint8_t(clamp01(v) * 255 + 0.5f));
    bytes.insert(bytes.end(), p.label.begin(), p.label.end());
    std::fwrite(bytes.data(), 1, bytes.size(), f);
    // keep a small copy of some pictures as background of later ones
    std::vector<Vec> small(size_t(FarPicture::N) * FarPicture::N);
    for (int y = 0; y < FarPicture::N; y++)
      for (int x = 0; x < FarPicture::N; x++)
        small[size_t(y) * FarPicture::N + x] =
            linear(p.colour[size_t(y * side / FarPicture::N) * side + x * side / FarPicture::N]);
    if (older.size() < 8) older.push_back(small);
    else older[i % 8] = small;
  }
  std::fclose(f);
  return std::rename((path + ".part").c_str(), path.c_str()) ? 1 : 0;
}
