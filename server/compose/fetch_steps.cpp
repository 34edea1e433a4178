#include "server/compose/fetch_steps.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "server/compose/menu/amounts.h"

namespace suppertide::compose {
namespace {

constexpr char kFetchMark[] = ".fetch";
constexpr char kFrozenMark[] = ".fetch-frozen";
constexpr char kThawMark[] = ".fetch-thaw";
// Common practice, no source, as all of these.
constexpr int kFetchMinutes = 2;
constexpr int kAttentionPercent = 20;  // beside a pot that is watched, not with hands in a dough
constexpr int kEarlierOnCounter =
    45;  // than it must; with the leads below the two hours that food may stand out
constexpr int kEarlierInFridge = 24 * 60;
constexpr int kPutAway = 5;
constexpr int kLeftOutPoints = 30;
constexpr std::size_t kLongestTitle = 100;

void setMinutes(google::protobuf::Duration* duration, int minutes) {
  duration->set_seconds(minutes * 60);
}

void addAfter(v1::Step& step, const std::string& id, int least, int most) {
  v1::After& after = *step.add_after();
  after.set_step_id(id);
  setMinutes(after.mutable_least_gap(), least);
  setMinutes(after.mutable_most_gap(), most);
}

bool hasPlace(const v1::Kitchen& kitchen, v1::PlaceKind kind) {
  return std::any_of(kitchen.places().begin(), kitchen.places().end(),
                     [&](const v1::Place& place) { return place.kind() == kind; });
}

// All that is taken out at once.
struct Fetching {
  const v1::Step* user = nullptr;
  bool frozen = false;
  bool thaws = false;
  int leadMinutes = 0;
  double grams = 0;  // of what thaws; 0: not known
  std::vector<const FetchNeed*> needs;
};

class Adder {
 public:
  Adder(const v1::Recipe& recipe, const std::vector<FetchNeed>& needs, const v1::Kitchen& kitchen)
      : recipe_(recipe) {
    for (const FetchNeed& need : needs)
      if (need.own == nullptr && hasPlace(kitchen, need.to == v1::PLACE_KIND_FRIDGE ? need.to : need.from))
        gather(need);
  }

  bool adds() const { return !fetchings_.empty(); }

  // The added steps first: every other step keeps its place among the others.
  v1::Recipe run() const {
    v1::Recipe out = recipe_;
    out.clear_steps();
    for (const Fetching& fetching : fetchings_) {
      *out.add_steps() = fetchStep(fetching);
      if (fetching.thaws) *out.add_steps() = thawStep(fetching);
    }
    for (int k = 0; k < recipe_.steps_size(); ++k) *out.add_steps() = withAfters(k);
    return out;
  }

 private:
  void gather(const FetchNeed& need) {
    const bool frozen = need.from == v1::PLACE_KIND_FREEZER;
    auto here = std::find_if(fetchings_.begin(), fetchings_.end(), [&](const Fetching& other) {
      return other.user == need.user && other.frozen == frozen;
    });
    if (here == fetchings_.end()) {
      here = fetchings_.emplace(here);
      here->user = need.user;
      here->frozen = frozen;
    }
    here->thaws = here->thaws || need.thaws;
    here->leadMinutes = std::max(here->leadMinutes, need.leadMinutes);
    if (need.thaws && need.amount.kind == kitchen::AmountKind::kGrams)
      here->grams = std::max(here->grams, need.amount.value);
    here->needs.push_back(&need);
  }

  static v1::Step fetchStep(const Fetching& fetching) {
    std::vector<std::string> names;
    std::vector<std::string> amounts;
    for (const FetchNeed* need : fetching.needs) {
      names.push_back(need->name.substr(0, need->name.find(',')));
      amounts.push_back(absl::StrCat(shownAmount(need->amount, kitchen::Measures::kMetric), " ", need->name));
    }
    v1::Step step;
    step.set_id(fetchStepId(*fetching.needs.front()));
    step.set_title(absl::StrCat(fetching.frozen ? "Take out of the freezer: " : "Take out of the fridge: ",
                                absl::StrJoin(names, ", ")));
    if (step.title().size() > kLongestTitle)
      step.set_title(fetching.frozen ? "Take out of the freezer" : "Take out of the fridge");
    step.set_instructions(absl::StrCat(absl::StrJoin(amounts, "; "),
                                       fetching.frozen ? ", into the fridge." : ", onto the counter."));
    step.set_kind(v1::STEP_KIND_FETCH);
    setMinutes(step.mutable_duration()->mutable_likely(), kFetchMinutes);
    step.set_attention_percent(kAttentionPercent);
    step.set_starts_free(true);
    step.set_safety_class(fetching.user->safety_class());
    if (fetching.frozen) step.add_place_kinds(v1::PLACE_KIND_FRIDGE);
    if (fetching.thaws) return step;
    step.set_may_be_left_out(true);
    step.set_left_out_points(kLeftOutPoints);
    return step;
  }

  static std::string thawId(const Fetching& fetching) { return absl::StrCat(fetching.user->id(), kThawMark); }

  static v1::Step thawStep(const Fetching& fetching) {
    v1::Step step;
    step.set_id(thawId(fetching));
    step.set_title(absl::StrCat("Thaw: ", fetching.needs.front()->name).substr(0, kLongestTitle));
    step.set_kind(v1::STEP_KIND_THAW);
    step.set_mass_g(fetching.grams);
    if (fetching.grams <= 0) {
      setMinutes(step.mutable_duration()->mutable_likely(), fetching.leadMinutes);
      setMinutes(step.mutable_longest_duration(), fetching.leadMinutes + kEarlierInFridge);
    }
    step.set_safety_class(fetching.user->safety_class());
    addAfter(step, fetchStepId(*fetching.needs.front()), 0, kPutAway);
    return step;
  }

  // The recipe's step with what it comes after said, since its neighbours changed.
  v1::Step withAfters(int k) const {
    v1::Step step = recipe_.steps(k);
    if (step.after().empty() && !step.starts_free() && k > 0)
      step.add_after()->set_step_id(recipe_.steps(k - 1).id());
    for (const Fetching& fetching : fetchings_) {
      if (fetching.user != &recipe_.steps(k)) continue;
      if (fetching.thaws) {
        addAfter(step, thawId(fetching), 0, kPutAway);
        continue;
      }
      addAfter(step, fetchStepId(*fetching.needs.front()), fetching.leadMinutes,
               fetching.leadMinutes + (fetching.frozen ? kEarlierInFridge : kEarlierOnCounter));
    }
    step.set_starts_free(step.after().empty());
    return step;
  }

  const v1::Recipe& recipe_;
  std::vector<Fetching> fetchings_;
};

}  // namespace

bool isFetchId(const std::string& stepId) {
  return stepId.find(kFetchMark) != std::string::npos;
}

std::string withoutFetch(const std::string& stepId) {
  return stepId.substr(0, stepId.find(kFetchMark));
}

std::string fetchStepId(const FetchNeed& need) {
  if (need.own != nullptr) return need.own->id();
  return absl::StrCat(need.user->id(), need.from == v1::PLACE_KIND_FREEZER ? kFrozenMark : kFetchMark);
}

std::shared_ptr<const v1::Recipe> withFetches(const v1::Recipe& recipe, const std::vector<FetchNeed>& needs,
                                              const v1::Kitchen& kitchen) {
  const Adder adder(recipe, needs, kitchen);
  return adder.adds() ? std::make_shared<const v1::Recipe>(adder.run()) : nullptr;
}

}  // namespace suppertide::compose
