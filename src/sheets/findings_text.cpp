#include "sheets/findings_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "domain/finding_help.hpp"
#include "domain/rehearsal_names.hpp"
#include "sheets/page.hpp"

namespace repwright::sheets {
namespace {

using domain::Finding;
using domain::FindingSeverity;

/// Findings of one kind and weight, told in one breath.
struct Told {
  const Finding* first = nullptr;
  std::vector<std::string> sentences;
  std::vector<int> lines;  // of the board, each once
};

std::vector<Told> told(std::span<const Finding> findings) {
  std::vector<Told> all;
  for (const Finding& finding : findings) {
    if (finding.kind == domain::FindingKind::LimitSwapped) continue;
    auto at = std::ranges::find_if(all, [&](const Told& one) {
      return one.first->kind == finding.kind && one.first->severity == finding.severity;
    });
    if (at == all.end()) at = all.insert(all.end(), Told{&finding, {}, {}});
    if (std::ranges::find(at->sentences, finding.text) == at->sentences.end())
      at->sentences.push_back(finding.text);
    if (finding.line > 0 && std::ranges::find(at->lines, finding.line) == at->lines.end())
      at->lines.push_back(finding.line);
  }
  return all;
}

std::string_view mark_of(FindingSeverity severity) {
  switch (severity) {
    case FindingSeverity::Problem:
      return "!!";
    case FindingSeverity::Warning:
      return "! ";
    case FindingSeverity::Note:
      return "- ";
  }
  return "";
}

std::string entry(const Told& one) {
  std::vector<int> lines = one.lines;
  std::ranges::sort(lines);
  const std::string where =
      lines.empty() ? ""
                    : fmt::format("{} {}, ", lines.size() == 1 ? "line" : "lines", fmt::join(lines, " "));
  return paragraph(fmt::format("  {} ", mark_of(one.first->severity)),
                   fmt::format("{} [{}{}]", fmt::join(one.sentences, " "), where, name_of(one.first->kind)));
}

}  // namespace

std::string findings_text(std::span<const Finding> findings) {
  constexpr std::size_t most_at_once = 3;
  const std::vector<Told> all = told(findings);
  if (all.empty()) return heading("WHAT MATTERS", "") + "  Nothing stands out.\n";
  std::string text = heading(all.size() > 1 ? "WHAT MATTERS FIRST" : "WHAT MATTERS", "");
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (i == most_at_once) text += heading("ALSO", "");
    text += entry(all[i]);
    const std::string_view help = domain::help_with(all[i].first->kind);
    if (i < most_at_once && !help.empty()) text += paragraph("     May help: ", help, 5);
  }
  return text;
}

}  // namespace repwright::sheets
