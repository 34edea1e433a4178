// The plain equations solved by CVODE (variable order, implicit, error-controlled): the
// reference that owes nothing to the product's method.
#pragma once

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include "server/bread/temperature_by_hour.h"
#include "tests/bread/plain_equations.h"

namespace suppertide::bread {

class CvodeFermentation {
 public:
  CvodeFermentation(const DoughKind& kind, const DoughState& start, double relativeTolerance = 1e-8);
  ~CvodeFermentation();
  CvodeFermentation(const CvodeFermentation&) = delete;
  CvodeFermentation& operator=(const CvodeFermentation&) = delete;

  // Begins a stay: the air's slope jumps, so the solver starts afresh.
  void enter(const TemperatureByHour& air, double hourOfDay, double tau);
  // Goes on by `hours` of the stay. False when CVODE gave up.
  bool run(double hours);

  double celsius() const { return NV_Ith_S(y_, 0); }
  double rise() const { return equations_.rise(state()); }

 private:
  static int slopes(realtype hour, N_Vector y, N_Vector ydot, void* self);
  PlainState state() const;

  PlainEquations equations_;
  TemperatureByHour air_;
  double hourOfDay_ = 0;
  double tau_ = 1;
  double hoursInStay_ = 0;
  double age_;  // when the stay began
  SUNContext context_ = nullptr;
  N_Vector y_ = nullptr;
  SUNMatrix matrix_ = nullptr;
  SUNLinearSolver solver_ = nullptr;
  void* cvode_ = nullptr;
};

}  // namespace suppertide::bread
