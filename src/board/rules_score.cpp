#include <array>
#include <utility>

#include "board/session.hpp"

/// What counts.
namespace repwright::board {
namespace {

using domain::Score;
using Phrase = std::pair<std::string_view, Score>;

constexpr std::array score_phrases{Phrase{"total cals", Score::KcalSum},
                                   Phrase{"total cal", Score::KcalSum},
                                   Phrase{"total kcal", Score::KcalSum},
                                   Phrase{"total calories", Score::KcalSum},
                                   Phrase{"sum of cals", Score::KcalSum},
                                   Phrase{"total m", Score::DistanceSum},
                                   Phrase{"total metres", Score::DistanceSum},
                                   Phrase{"total meters", Score::DistanceSum},
                                   Phrase{"total distance", Score::DistanceSum},
                                   Phrase{"total reps", Score::RepsSum},
                                   Phrase{"sum of reps", Score::RepsSum},
                                   Phrase{"all reps", Score::RepsSum},
                                   Phrase{"slowest round", Score::MaxTime},
                                   Phrase{"slowest", Score::MaxTime},
                                   Phrase{"slowest time", Score::MaxTime},
                                   Phrase{"slowest interval", Score::MaxTime},
                                   Phrase{"fastest round", Score::MinTime},
                                   Phrase{"fastest", Score::MinTime},
                                   Phrase{"fastest time", Score::MinTime},
                                   Phrase{"lowest round", Score::MinInterval},
                                   Phrase{"lowest interval", Score::MinInterval},
                                   Phrase{"lowest set", Score::MinInterval},
                                   Phrase{"lowest", Score::MinInterval},
                                   Phrase{"worst round", Score::MinInterval},
                                   Phrase{"best round", Score::MaxInterval},
                                   Phrase{"best interval", Score::MaxInterval},
                                   Phrase{"best set", Score::MaxInterval},
                                   Phrase{"best", Score::MaxInterval},
                                   Phrase{"highest round", Score::MaxInterval},
                                   Phrase{"first team home", Score::Place},
                                   Phrase{"first home", Score::Place},
                                   Phrase{"fastest team", Score::Place},
                                   Phrase{"place", Score::Place},
                                   Phrase{"order", Score::Place},
                                   Phrase{"points", Score::Points},
                                   Phrase{"pts", Score::Points},
                                   Phrase{"rounds reps", Score::RoundsReps},
                                   Phrase{"rounds", Score::RoundsReps},
                                   Phrase{"rung reps", Score::RungReps},
                                   Phrase{"last full minute", Score::LastFullMinute},
                                   Phrase{"times", Score::Times},
                                   Phrase{"each time", Score::Times},
                                   Phrase{"each round", Score::Times},
                                   Phrase{"every round", Score::Times},
                                   Phrase{"time", Score::Time},
                                   Phrase{"load", Score::Load},
                                   Phrase{"weight", Score::Load},
                                   Phrase{"kg", Score::Load},
                                   Phrase{"heaviest set", Score::Load},
                                   Phrase{"heaviest", Score::Load},
                                   Phrase{"reps", Score::Reps},
                                   Phrase{"max reps", Score::Reps},
                                   Phrase{"cals", Score::Kcal},
                                   Phrase{"calories", Score::Kcal},
                                   Phrase{"distance", Score::Distance},
                                   Phrase{"metres", Score::Distance},
                                   Phrase{"meters", Score::Distance},
                                   Phrase{"none", Score::None},
                                   Phrase{"no score", Score::None}};

/// The longest score phrase here; a plus between its words does not matter.
std::optional<Score> take_score_words(Cursor& cursor) {
  std::size_t longest = 0;
  Score score = Score::None;
  for (const auto& [phrase, meant] : score_phrases) {
    std::size_t reach = cursor.reach(phrase);
    if (phrase == "rounds reps" || phrase == "rung reps") {
      const std::string_view first = phrase.substr(0, phrase.find(' '));
      const std::size_t words = cursor.reach(first);
      if (words > 0 &&
          (cursor.at_symbol('+', words) || cursor.at_symbol('&', words) || cursor.at_any({"and"}, words)) &&
          cursor.at_any({"reps"}, words + 1))
        reach = words + 2;
    }
    if (reach <= longest) continue;
    longest = reach;
    score = meant;
  }
  if (longest == 0) return std::nullopt;
  cursor.next(longest);
  return score;
}

/// `score = burpees`: all of that movement, if nothing else is said.
std::optional<Score> score_of_movement(const Session& session, const Cursor& cursor) {
  const auto named = session.names.find(cursor);
  if (!named || named->marks != cursor.end() - cursor.position()) return std::nullopt;
  const domain::Movement* movement = session.names.movement(named->meaning.movements.front());
  if (movement == nullptr || movement->default_unit != domain::Unit::Reps) return std::nullopt;
  return Score::RepsSum;
}

void add_score(Session& session, Score score) {
  ScoreLine line;
  line.score = score;
  line.chapter = session.score_from;
  line.last_chapter = session.chapters.size() - 1;
  line.last_draft = session.chapter().drafts.size();
  session.scores.push_back(line);
}

}  // namespace

bool read_score(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const bool said = ahead.take_any({"score", "scores", "scored", "record", "scoring", "score is"});
  if (said) {
    ahead.take_symbol(':');
    ahead.take_symbol('=');
    ahead.take_any({"is", "your", "by", "the", "for"});
  }
  Cursor words = ahead;
  const auto score = take_score_words(words);
  if (!score) {
    if (!said || ahead.at_number()) return false;
    if (const auto counted = score_of_movement(session, ahead)) {
      add_score(session, *counted);
      cursor.next(cursor.end() - cursor.position());
      return true;
    }
    // 'score: spread of the 3 times' is for people.
    const domain::Span whole = cursor.rest_span();
    keep_words(session, whole);
    cursor.next(cursor.end() - cursor.position());
    return true;
  }
  const bool plain_word = !said;
  if (plain_word) {
    const bool counts = words.take_any(
        {"counts", "count", "wins", "is your score", "is the score", "scores", "decides", "is score"});
    const bool first_home = *score == Score::Place && cursor.at("first");
    if (!counts && !first_home && *score != Score::LastFullMinute) {
      const bool total = *score == Score::KcalSum || *score == Score::DistanceSum || *score == Score::RepsSum;
      if (!total || !words.done()) return false;
    }
  }
  words.take_any({"counts", "wins", "is the score"});
  // 'A and B added' and the like say nothing more.
  while (!words.done() && !words.at_symbol(';') && !words.at("cap") && !words.at("rest")) words.next();
  add_score(session, *score);
  cursor = words;
  return true;
}

}  // namespace repwright::board
