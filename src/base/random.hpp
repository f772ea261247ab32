#pragma once

#include <array>
#include <cstdint>

#include "base/math.hpp"
#include "base/normal.hpp"

/// Random numbers as a pure function of where they are used. No draw depends on the draws before it, on other
/// people or on threads; two variants of a class that ask for the same draw get the same luck.
namespace repwright::base {

/// What a coach types to repeat a rehearsal exactly.
struct Seed {
  std::uint64_t value = 1;
};

/// What draws are for: each purpose has draws of its own, so that one more draw here moves nothing there.
enum class Purpose : std::uint8_t { Body, Day, Step, Judge, Class, Attendance, Demo, Search, Knack };

/// The block of 4 x 64 random bits that belongs to a counter under a key: Philox4x64-10 of J. K. Salmon,
/// M. A. Moraes, R. O. Dror and D. E. Shaw, SC11 (2011), doi 10.1145/2063384.2063405.
constexpr std::array<std::uint64_t, 4> philox(std::array<std::uint64_t, 4> counter,
                                              std::array<std::uint64_t, 2> key) {
  constexpr int rounds = 10;
  for (int round = 0; round < rounds; ++round) {
    const auto lower = static_cast<unsigned __int128>(0xD2E7470EE14C6C93U) * counter[0];
    const auto upper = static_cast<unsigned __int128>(0xCA5A826395121157U) * counter[2];
    counter = {
        static_cast<std::uint64_t>(upper >> 64) ^ counter[1] ^ key[0], static_cast<std::uint64_t>(upper),
        static_cast<std::uint64_t>(lower >> 64) ^ counter[3] ^ key[1], static_cast<std::uint64_t>(lower)};
    key = {key[0] + 0x9E3779B97F4A7C15U, key[1] + 0xBB67AE8584CAA73BU};
  }
  return counter;
}

/// A number evenly distributed in (0, 1) from 64 random bits: the middle of one of 2^52 equal cells, hence
/// never 0, never 1, and symmetric about 1/2.
constexpr double unit_interval(std::uint64_t bits) {
  return (static_cast<double>(static_cast<std::int64_t>(bits >> 12)) + 0.5) * 0x1p-52;
}

/// The draws of one person in one run for one purpose, in order. The k-th draw, whatever its kind, uses the
/// k-th 64-bit word. For draws that belong to nobody take person 0 and a purpose that no person uses.
class Stream {
 public:
  constexpr Stream(Seed seed, std::uint64_t run, std::uint64_t person, Purpose purpose)
      : seed_(seed), run_(run), person_(person), purpose_(purpose) {}

  /// 64 evenly distributed bits.
  constexpr std::uint64_t bits() {
    const std::uint64_t place = next_ % 4;
    if (place == 0) block_ = block_of(next_ / 4);
    ++next_;
    return block_[place];
  }

  /// Evenly distributed in (0, 1), never 0, never 1.
  constexpr double uniform() { return unit_interval(bits()); }

  /// Standard normal: mean 0, standard deviation 1, within 8.3 either way.
  double normal() { return normal_quantile(uniform()); }

  /// Lognormal with median 1, whose logarithm has the standard deviation `log_sd`.
  double lognormal(double log_sd) { return base::exp(log_sd * normal()); }

  /// The bits of draw number `draw`, counted from 0, wherever the stream stands.
  constexpr std::uint64_t bits_at(std::uint64_t draw) const { return block_of(draw / 4)[draw % 4]; }

 private:
  constexpr std::array<std::uint64_t, 4> block_of(std::uint64_t number) const {
    return philox({number, run_, person_, static_cast<std::uint64_t>(purpose_)}, {seed_.value, 0});
  }

  Seed seed_;
  std::uint64_t run_;
  std::uint64_t person_;
  Purpose purpose_;
  std::uint64_t next_ = 0;
  std::array<std::uint64_t, 4> block_{};
};

/// What `Stream::uniform` returns as draw number `draw`, counted from 0, without the draws before it.
constexpr double uniform_at(Seed seed, std::uint64_t run, std::uint64_t person, Purpose purpose,
                            std::uint64_t draw) {
  return unit_interval(Stream(seed, run, person, purpose).bits_at(draw));
}

/// What `Stream::normal` returns as draw number `draw`, counted from 0, without the draws before it.
inline double normal_at(Seed seed, std::uint64_t run, std::uint64_t person, Purpose purpose,
                        std::uint64_t draw) {
  return normal_quantile(uniform_at(seed, run, person, purpose, draw));
}

}  // namespace repwright::base
