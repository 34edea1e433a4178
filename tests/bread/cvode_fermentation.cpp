#include "tests/bread/cvode_fermentation.h"

namespace suppertide::bread {

CvodeFermentation::CvodeFermentation(const DoughKind& kind, const DoughState& start, double relativeTolerance)
    : equations_(kind, start), age_(start.hoursSinceMix) {
  SUNContext_Create(nullptr, &context_);
  y_ = N_VNew_Serial(kPlainStates, context_);
  const PlainState begin = PlainEquations::stateOf(start);
  for (std::size_t k = 0; k < kPlainStates; ++k) NV_DATA_S(y_)[k] = begin[k];
  cvode_ = CVodeCreate(CV_BDF, context_);
  CVodeInit(cvode_, slopes, 0, y_);
  CVodeSStolerances(cvode_, relativeTolerance, relativeTolerance / 100);
  CVodeSetUserData(cvode_, this);
  matrix_ = SUNDenseMatrix(kPlainStates, kPlainStates, context_);
  solver_ = SUNLinSol_Dense(y_, matrix_, context_);
  CVodeSetLinearSolver(cvode_, solver_, matrix_);
  CVodeSetMaxNumSteps(cvode_, 100'000);
}

CvodeFermentation::~CvodeFermentation() {
  CVodeFree(&cvode_);
  SUNLinSolFree(solver_);
  SUNMatDestroy(matrix_);
  N_VDestroy(y_);
  SUNContext_Free(&context_);
}

void CvodeFermentation::enter(const TemperatureByHour& air, double hourOfDay, double tau) {
  age_ += hoursInStay_;
  air_ = air;
  hourOfDay_ = hourOfDay;
  tau_ = tau;
  hoursInStay_ = 0;
  CVodeReInit(cvode_, 0, y_);
}

bool CvodeFermentation::run(double hours) {
  if (hours <= 0) return true;
  hoursInStay_ += hours;
  realtype reached = 0;
  CVodeSetStopTime(cvode_, hoursInStay_);
  return CVode(cvode_, hoursInStay_, y_, &reached, CV_NORMAL) >= 0;
}

int CvodeFermentation::slopes(realtype hour, N_Vector y, N_Vector ydot, void* self) {
  const auto& own = *static_cast<const CvodeFermentation*>(self);
  PlainState state;
  for (std::size_t k = 0; k < kPlainStates; ++k) state[k] = NV_DATA_S(y)[k];
  const PlainState slope =
      own.equations_.slope(state, own.air_.at(own.hourOfDay_ + hour), own.tau_, own.age_ + hour);
  for (std::size_t k = 0; k < kPlainStates; ++k) NV_DATA_S(ydot)[k] = slope[k];
  return 0;
}

PlainState CvodeFermentation::state() const {
  PlainState state;
  for (std::size_t k = 0; k < kPlainStates; ++k) state[k] = NV_DATA_S(y_)[k];
  return state;
}

}  // namespace suppertide::bread
