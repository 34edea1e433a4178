// Temperatures and masses in the household's own units.
#pragma once

#include <string>

#include "suppertide/v1/household.pb.h"

namespace suppertide::terminal {

class Units {
 public:
  explicit Units(const v1::Household& household);
  Units(bool fahrenheit, bool ounces) : fahrenheit_(fahrenheit), ounces_(ounces) {}

  // An oven dial: "180 °C", or "355 °F" to the nearest 5.
  std::string dial(int celsius) const { return number(dialValue(celsius)) + sign(); }
  // The same without its sign, for "from 200 instead of 180 °C".
  std::string dialNumber(int celsius) const { return number(dialValue(celsius)); }
  // Food, dough, water: to the whole degree.
  std::string degrees(double celsius) const;
  // The same of a limit, never on the wrong side of it: 71.1 °C are "72 °C" at least.
  std::string degreesAtLeast(double celsius) const;
  std::string degreesAtMost(double celsius) const;
  // "350 g", "8.5 g" below ten; with ounces beside it where they are used.
  std::string mass(double grams) const;
  // "34 x 23 cm", never more than it is; "13.25 x 9 in" to the quarter inch below in US measures.
  std::string atMost(int widthMm, int depthMm) const;
  // "9 cm", "3.5 in": to the nearest half.
  std::string height(int heightMm) const;

 private:
  int dialValue(int celsius) const;
  static std::string number(int value) { return std::to_string(value); }
  std::string sign() const { return fahrenheit_ ? " °F" : " °C"; }

  bool fahrenheit_;
  bool ounces_;  // and inches
};

}  // namespace suppertide::terminal
