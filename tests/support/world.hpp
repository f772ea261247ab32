#pragma once

#include <string>
#include <string_view>
#include <vector>

/// Worlds drawn in text: a floor, a class, what they do, and what must come of it.
///
///     floor   bars=1 rowers=2          places and how many
///     house   give up the place        at each break (else it is kept)
///     class   ana bo@0:30 cy           who comes, and how late
///     team    ana bo                   one team a line
///     pool    10 one works             units of the next pool of every team; else all draw from it together
///     heats   ana bo / cy              who starts in which heat
///     change  1:15                     between two heats
///     length  5:00                     of the piece; left out: until the last is home
///     stagger 0:15                     one starts every so often
///     penalty 0:05                     played at each break of a set
///     duty    0:10 every 1:00 from 1:00    or `best pulls every ...`
///     door    0:08                     out and again in, of runs outdoors
///     hand    0:02                     over, in teams; else three seconds
///     plan    3 x ( 20 s bars, 5 reps, rest 0:10, round )
///
/// Everybody has the same body, made for working times out by hand. A plan is a list of steps: `20 s [place]`
/// holds exactly so long; `5 reps [place]` takes 2 s each and never tires; `5 pulls [place]` takes 2 s each
/// and 10 are the largest set; `1 never` cannot be done; `400 m` is run outdoors at 4 m/s, `40 shuttle`
/// indoors in metres, each ten of them with a turn of a second; `max reps`; `best pulls` is one set to
/// failure, `best-2 pulls` one of two fewer; `rest 0:10`, `rest ready`, `rest x 1` (as long as since the
/// mark), `until 2:00`, `by 2:00 LABEL`, `no bell`, `resume`, `mark`, `lap`, `round`, `take`, `pass`, `meet`,
/// `meet all`, `pool 1 reps [place]`, `LABEL:`, `goto LABEL`, `home`. `n x ( ... )` writes a list n times.
/// After a line of work, `sets 5` plans a break of three seconds after each fifth unit, `else rings` names a
/// second station for whoever finds the own place taken (`else spot`: the own spot).
///
///     expect  ana home 1:30            at that second after the start signal
///     expect  bo waits 0:20            in queues, in all
///     expect  ana reps 15 | rounds 3 | metres 400 | laps 4 | full laps 3 | capped | absent
///     expect  ana starts 2 at 0:30     her third line of work
///     expect  queue bars 2             the longest
///     expect  class ends 5:00
namespace repwright::test {

/// What differs between the expectations and what the floor did: empty if all came true. Throws what is wrong
/// with the drawing itself.
std::vector<std::string> disappointments(std::string_view world);

}  // namespace repwright::test
