// How long remedies take on a feast that does not fit.
//
//   remedy_bench demo/feast.json
//   remedy_bench demo/feast.json --threads 1
//
// The bundle's first event is made too tight: one oven in which temperatures hardly
// give way, one burner, a baker at home for the last hours only, all courses at once; then
// several of these together. All dishes are due in time, and but for the late baker kept for
// minutes. Prints a row a way: times by the clock on the wall,
// then the processor time of all threads.
#include <chrono>
#include <fstream>
#include <iostream>
#include <sstream>

#include <google/protobuf/util/json_util.h>
#include <CLI/CLI.hpp>

#include "server/compose/remedies/find_remedies.h"
#include "suppertide/v1/bundle.pb.h"
#include "tests/bench/cpu_time.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

class Stopwatch : public RemedyMonitor {
 public:
  void clashesKnown(const std::vector<v1::Clash>&) override { clashes = seconds(); }
  void found(const FoundRemedy& remedy) override {
    if (first == 0) first = seconds();
    if (remedy.number > count) {
      count = remedy.number;
      last = seconds();
    }
  }
  void tried(int number, int) override { tries = number; }

  double seconds() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  }

  std::chrono::steady_clock::time_point begin = std::chrono::steady_clock::now();
  CpuWatch cpu;
  double clashes = 0;
  double first = 0;
  double last = 0;
  int count = 0;
  int tries = 0;
};

v1::Bundle served(v1::Bundle bundle, int keptSeconds) {
  for (v1::Course& course : *bundle.mutable_events(0)->mutable_courses())
    course.mutable_late_limit()->set_seconds(0);
  for (v1::Recipe& recipe : *bundle.mutable_recipes()) {
    if (keptSeconds == 0) break;
    recipe.mutable_holding()->clear_best_from();
    recipe.mutable_holding()->clear_best_until();
    recipe.mutable_holding()->mutable_longest()->set_seconds(keptSeconds);
  }
  return bundle;
}

// As little as a roast written for 160 °C needs to be safe.
constexpr int kGivesWay = 5;

v1::Bundle oneOven(const v1::Bundle& feast) {
  v1::Bundle bundle = served(feast, 600);
  v1::Kitchen& kitchen = *bundle.mutable_kitchens(0);
  const std::string kept = kitchen.ovens(0).id();
  kitchen.mutable_ovens()->DeleteSubrange(1, kitchen.ovens_size() - 1);
  for (int i = kitchen.places_size() - 1; i >= 0; --i)
    if (!kitchen.places(i).oven_id().empty() && kitchen.places(i).oven_id() != kept)
      kitchen.mutable_places()->DeleteSubrange(i, 1);
  for (v1::Recipe& recipe : *bundle.mutable_recipes())
    for (v1::Step& step : *recipe.mutable_steps())
      if (step.has_oven()) {
        step.mutable_oven()->set_min_setpoint_celsius(step.oven().setpoint_celsius());
        step.mutable_oven()->set_max_setpoint_celsius(step.oven().setpoint_celsius() + kGivesWay);
      }
  return bundle;
}

v1::Bundle oneBurner(const v1::Bundle& feast) {
  v1::Bundle bundle = served(feast, 300);
  bundle.mutable_kitchens(0)->set_burner_count(1);
  return bundle;
}

// The first cook is at home from six hours before the first course only.
v1::Bundle lateBaker(const v1::Bundle& feast) {
  v1::Bundle bundle = served(feast, 0);
  v1::Event& event = *bundle.mutable_events(0);
  const auto serving = event.courses(0).serving_time().seconds();
  auto& cook = *event.mutable_cooks(0);
  cook.clear_available();
  v1::TimeSpan& span = *cook.add_available();
  span.mutable_start()->set_seconds(serving - 6 * 3600);
  span.mutable_limit()->set_seconds(serving + 4 * 3600);
  return bundle;
}

// Every course when the second is.
v1::Bundle atOnce(v1::Bundle feast) {
  v1::Event& event = *feast.mutable_events(0);
  const auto serving = event.courses(std::min(1, event.courses_size() - 1)).serving_time().seconds();
  for (v1::Course& course : *event.mutable_courses()) course.mutable_serving_time()->set_seconds(serving);
  return feast;
}

int time(const char* name, const v1::Bundle& bundle, const RemedyOptions& options) {
  const Documents documents = documentsOf(bundle);
  Stopwatch watch;
  const auto search = findRemedies(documents, options, &watch);
  if (!search.ok()) {
    std::cerr << search.status().message() << '\n';
    return 1;
  }
  std::cout << name << '\t' << search->clashes.size() << '\t' << watch.clashes << '\t' << watch.tries << '\t'
            << search->remedies.size() << '\t' << watch.first << '\t' << watch.last << '\t' << watch.seconds()
            << '\t' << watch.cpu.seconds() << (search->fits ? "\tfits as it is" : "") << '\n';
  return 0;
}

int run(const std::string& path, const RemedyOptions& options) {
  std::ifstream file(path);
  std::stringstream text;
  text << file.rdbuf();
  v1::Bundle feast;
  if (!google::protobuf::util::JsonStringToMessage(text.str(), &feast).ok() || feast.events().empty()) {
    std::cerr << path << " is no bundle with an event\n";
    return 1;
  }
  std::cout << "way\tclashes\tknown s\ttried\tremedies\tfirst s\tlast s\tall s\tcpu s\n";
  const auto timed = [&](const char* name, const v1::Bundle& bundle) { return time(name, bundle, options); };
  return timed("one oven", oneOven(feast)) + timed("one burner", oneBurner(feast)) +
         timed("late baker", lateBaker(feast)) + timed("at once", served(atOnce(feast), 600)) +
         timed("one oven, at once", atOnce(oneOven(feast))) +
         timed("one oven, late baker", lateBaker(oneOven(feast))) +
         timed("one oven, at once, late baker", lateBaker(atOnce(oneOven(feast))));
}

}  // namespace
}  // namespace suppertide::compose

int main(int argc, char** argv) {
  CLI::App app("Times the search for remedies");
  std::string path;
  int threads = 2;
  app.add_option("bundle", path, "A bundle as JSON")->required();
  app.add_option("--threads", threads, "1 or 2")->check(CLI::Range(1, 2));
  CLI11_PARSE(app, argc, argv);
  suppertide::compose::RemedyOptions options;
  options.twoThreads = threads == 2;
  return suppertide::compose::run(path, options);
}
