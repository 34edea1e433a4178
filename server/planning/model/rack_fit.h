// Whether dishes can stand in an oven at the same time.
//
// The engine asks this of small sets only and relies on one property: any part
// of a set that fits, fits. The rule itself (pans, footprints, heights) is the
// caller's; RackCount is the plain one.
#pragma once

#include <memory>
#include <vector>

namespace suppertide::planning {

// One dish's pans. Sizes in millimetres; `racks` positions for the plain rule.
struct Load {
  int racks = 1;
  int widthMm = 0;
  int depthMm = 0;
  int heightMm = 0;
  int panCount = 1;
};

class RackFit {
 public:
  virtual ~RackFit() = default;
  virtual bool fits(const std::vector<Load>& loads) const = 0;
};

// Fits while the racks asked for do not exceed the racks there are.
class RackCount : public RackFit {
 public:
  explicit RackCount(int racks) : racks_(racks) {}
  bool fits(const std::vector<Load>& loads) const override;

 private:
  int racks_;
};

}  // namespace suppertide::planning
