// Names for people of everything that a plan refers to by id.
#pragma once

#include <map>
#include <string>

#include "suppertide/v1/bundle.pb.h"

namespace suppertide::terminal {

// Built once from the documents of one event. Every lookup answers: what is not
// known is called by its id, so that nothing is hidden. All names are one line,
// safe to print.
class Names {
 public:
  // `event`: the one the plan is for; its kitchen decides about ovens and places.
  Names(const v1::Bundle& bundle, const v1::Event& event);

  std::string cook(const std::string& id) const { return find(cooks_, id); }
  std::string dish(const std::string& id) const { return find(dishes_, id); }
  std::string course(const std::string& id) const { return find(courses_, id); }
  std::string courseOfDish(const std::string& dishId) const { return course(find(courseIds_, dishId)); }
  std::string oven(const std::string& id) const { return find(ovens_, id); }
  std::string place(const std::string& id) const { return find(places_, id); }
  std::string equipment(const std::string& id) const { return find(equipment_, id); }
  // A cook, oven, equipment or place; "burners" gives "the burners".
  std::string thing(const std::string& id) const;
  // The title of a recipe step of a dish.
  std::string step(const std::string& dishId, const std::string& stepId) const;

 private:
  using Map = std::map<std::string, std::string>;
  static std::string find(const Map& map, const std::string& id);
  void addKitchen(const v1::Kitchen& kitchen);

  Map cooks_, dishes_, courses_, courseIds_, ovens_, places_, equipment_;
  Map steps_;  // by "dish_id/step_id"
};

}  // namespace suppertide::terminal
