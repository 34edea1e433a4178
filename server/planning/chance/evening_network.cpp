#include "server/planning/chance/evening_network.h"

#include <algorithm>
#include <cstddef>
#include <queue>
#include <tuple>

#include "server/base/index.h"

namespace suppertide::planning {
namespace {}  // namespace

EveningNetwork::EveningNetwork(const Problem& problem, const Schedule& schedule) {
  const PlanOrder order = orderOf(problem, schedule);
  readSteps(problem, schedule, order);
  sortEvents(problem, schedule, order);
  addLinks(order);
  things_.emplace(problem, schedule, order, eventOrder_);
}

void EveningNetwork::readSteps(const Problem& problem, const Schedule& schedule, const PlanOrder& order) {
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    const Step& step = problem.steps[i];
    const Placement& place = schedule.steps[i];
    planned_.push_back(static_cast<float>(place.start));
    planned_.push_back(static_cast<float>(place.end));
    StepTimes times;
    times.length = static_cast<float>(place.end - place.start);
    times.notBefore = static_cast<float>(order.notBefore[i]);
    if (isServed(problem, schedule, static_cast<int>(i))) {
      const LengthTable& table = step.modes[at(place.mode)].length;
      times.range = table.at(place.start);
      if (table.rows.size() > 1) times.rows = &table;
      if (step.kind == StepKind::kFerment) {
        times.ending = Ending::kFerment;
      } else if (times.range.shortest < times.range.longest) {
        times.ending = Ending::kElastic;
      }
      if (step.pin.start && step.pin.end) times.ending = Ending::kHappened;
    }
    steps_.push_back(times);
  }
}

// By planned time; of events in one minute, what follows comes after what it follows.
void EveningNetwork::sortEvents(const Problem& problem, const Schedule& schedule, const PlanOrder& order) {
  std::vector<std::vector<int>> after(planned_.size());
  std::vector<int> waitsFor(planned_.size(), 0);
  const auto add = [&](int from, int to) {
    after[at(from)].push_back(to);
    ++waitsFor[at(to)];
  };
  for (const Follow& follow : order.follows) add(follow.from, follow.to);
  for (const Follow& within : order.within) add(within.from, within.to);
  using Key = std::tuple<float, int>;
  std::priority_queue<Key, std::vector<Key>, std::greater<>> ready;
  std::vector<int> left;
  for (int i = 0; i < static_cast<int>(problem.steps.size()); ++i) {
    if (!isServed(problem, schedule, i)) continue;
    add(startOf(i), endOf(i));
    left.push_back(startOf(i));
    left.push_back(endOf(i));
  }
  for (const int event : left)
    if (waitsFor[at(event)] == 0) ready.emplace(planned_[at(event)], event);
  nodeOf_.assign(planned_.size(), -1);
  std::stable_sort(left.begin(), left.end(), [&](int a, int b) { return planned_[at(a)] < planned_[at(b)]; });
  while (eventOrder_.size() < left.size()) {
    if (ready.empty()) {
      // A ring of events in one minute: begin with any, and addLinks() leaves out what points back to it.
      const auto first =
          std::find_if(left.begin(), left.end(), [&](int event) { return nodeOf_[at(event)] < 0; });
      ready.emplace(planned_[at(*first)], *first);
    }
    const int event = std::get<1>(ready.top());
    ready.pop();
    if (nodeOf_[at(event)] >= 0) continue;
    nodeOf_[at(event)] = static_cast<int>(eventOrder_.size());
    eventOrder_.push_back(event);
    for (const int next : after[at(event)])
      if (--waitsFor[at(next)] == 0) ready.emplace(planned_[at(next)], next);
  }
}

void EveningNetwork::addLinks(const PlanOrder& order) {
  std::vector<std::vector<Link>> follows(planned_.size());
  std::vector<std::vector<Link>> within(planned_.size());
  const auto forward = [&](const Follow& link) { return nodeOf_[at(link.from)] < nodeOf_[at(link.to)]; };
  for (const Follow& link : order.follows)
    if (forward(link)) follows[at(link.to)].push_back({link.from, static_cast<float>(link.lag)});
  for (const Follow& link : order.within)
    if (forward(link)) within[at(link.to)].push_back({link.from, static_cast<float>(link.lag)});
  for (const int event : eventOrder_) {
    Node node;
    node.event = event;
    node.firstWithin = static_cast<int>(links_.size());
    links_.insert(links_.end(), within[at(event)].begin(), within[at(event)].end());
    node.firstFollow = static_cast<int>(links_.size());
    links_.insert(links_.end(), follows[at(event)].begin(), follows[at(event)].end());
    node.followLimit = static_cast<int>(links_.size());
    nodes_.push_back(node);
  }
}

Length EveningNetwork::rangeAt(const StepTimes& step, float start) const {
  if (step.rows == nullptr) return step.range;
  const Length moved = step.rows->at(static_cast<Minute>(start));
  return moved.possible() ? moved : step.range;
}

// When the step would end if nothing but its own length kept it.
float EveningNetwork::ownEnd(int step, float start, float factor) const {
  const StepTimes& times = steps_[at(step)];
  const float planned = planned_[at(endOf(step))];
  if (times.ending == Ending::kHappened) return planned;
  if (times.ending == Ending::kAsLong) return start + times.length * factor;
  const Length range = rangeAt(times, start);
  const float soonest = start + static_cast<float>(range.shortest) * factor;
  if (times.ending == Ending::kElastic) return std::max(planned, soonest);
  return std::clamp(planned, soonest, start + static_cast<float>(range.longest) * factor);
}

void EveningNetwork::runStart(const Node& node, const std::vector<Lanes>& factors,
                              std::vector<Lanes>& times) const {
  const int index = node.event / 2;
  const StepTimes& step = steps_[at(index)];
  Lanes out;
  out.fill(planned_[at(node.event)]);
  if (step.ending != Ending::kHappened) {
    for (int k = node.firstWithin; k < node.firstFollow; ++k) {
      const Lanes& from = times[at(links_[at(k)].from)];
      for (std::size_t lane = 0; lane < kLanes; ++lane)
        out[lane] = std::min(out[lane], from[lane] + links_[at(k)].lag);
    }
    for (std::size_t lane = 0; lane < kLanes; ++lane) out[lane] = std::max(out[lane], step.notBefore);
    for (int k = node.firstFollow; k < node.followLimit; ++k) {
      const Lanes& from = times[at(links_[at(k)].from)];
      for (std::size_t lane = 0; lane < kLanes; ++lane)
        out[lane] = std::max(out[lane], from[lane] + links_[at(k)].lag);
    }
  }
  Lanes& ends = times[at(endOf(index))];  // until runEnd() has looked at what the end follows
  const auto endAt = [&](float start, std::size_t lane) {
    return ownEnd(index, start, factors[at(index)][lane]);
  };
  for (std::size_t lane = 0; lane < kLanes; ++lane) ends[lane] = endAt(out[lane], lane);
  if (step.ending != Ending::kHappened && things_->asks(index))
    things_->firstFree(index, times, endAt, out, ends);
  times[at(node.event)] = out;
}

void EveningNetwork::runEnd(const Node& node, std::vector<Lanes>& times) const {
  if (steps_[at(node.event / 2)].ending == Ending::kHappened) return;
  Lanes& out = times[at(node.event)];
  for (int k = node.firstFollow; k < node.followLimit; ++k) {
    const Lanes& from = times[at(links_[at(k)].from)];
    for (std::size_t lane = 0; lane < kLanes; ++lane)
      out[lane] = std::max(out[lane], from[lane] + links_[at(k)].lag);
  }
}

void EveningNetwork::run(const std::vector<Lanes>& factors, std::vector<Lanes>& times) const {
  for (const Node& node : nodes_) {
    if (node.event % 2 == 0) {
      runStart(node, factors, times);
    } else {
      runEnd(node, times);
    }
  }
}

int EveningNetwork::deciderOf(int event, const std::vector<Lanes>& times, std::size_t lane) const {
  const Node& node = nodes_[at(nodeOf_[at(event)])];
  const StepTimes& step = steps_[at(event / 2)];
  const float when = times[at(event)][lane];
  const bool keepsPlan = event % 2 == 0 || step.ending != Ending::kAsLong;
  if (step.ending == Ending::kHappened || (keepsPlan && when <= planned_[at(event)])) return -1;
  for (int k = node.firstFollow; k < node.followLimit; ++k)
    if (times[at(links_[at(k)].from)][lane] + links_[at(k)].lag >= when) return links_[at(k)].from;
  return event % 2 == 0 ? things_->releaserOf(event / 2, when, times, lane) : startOf(event / 2);
}

std::vector<int> EveningNetwork::chainTo(int event, const std::vector<Lanes>& times, std::size_t lane) const {
  std::vector<int> chain;
  for (int next = event; next >= 0; next = deciderOf(next, times, lane)) chain.push_back(next);
  return chain;
}

}  // namespace suppertide::planning
