#include "advice/matching.hpp"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/maximum_weighted_matching.hpp>
#include <cmath>
#include <cstddef>

#include "base/require.hpp"

namespace repwright::advice {
namespace {

using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, boost::no_property,
                                    boost::property<boost::edge_weight_t, long>>;

constexpr double per_thousandth = 1000;
constexpr double largest_cost = 1e6;

}  // namespace

std::vector<int> match_in_pairs(int people, const std::function<double(int, int)>& cost) {
  base::require(people % 2 == 0, "pairs are made of an even number of people");
  Graph graph(static_cast<std::size_t>(people));
  // Heavier than anything that one pair less could save: the heaviest matching leaves nobody alone.
  const long most = static_cast<long>(largest_cost * per_thousandth) * (people + 1);
  for (int i = 0; i < people; ++i)
    for (int j = i + 1; j < people; ++j) {
      const double asked = cost(i, j);
      base::require(asked >= 0 && asked <= largest_cost, "a cost is between 0 and a million");
      boost::add_edge(static_cast<std::size_t>(i), static_cast<std::size_t>(j),
                      most - std::lround(asked * per_thousandth), graph);
    }
  std::vector<Graph::vertex_descriptor> mate(static_cast<std::size_t>(people));
  boost::maximum_weighted_matching(graph, mate.data());
  std::vector<int> partner;
  for (const Graph::vertex_descriptor other : mate) {
    base::require(other != boost::graph_traits<Graph>::null_vertex(),
                  "in a complete graph nobody is left over");
    partner.push_back(static_cast<int>(other));
  }
  return partner;
}

}  // namespace repwright::advice
