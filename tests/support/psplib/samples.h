// Small projects in the published formats, written for these tests.
#pragma once

namespace suppertide::planning::psplib {

// Two jobs of 3 and 4 minutes that want the same one machine, then a job of 2: 9 minutes; the chain is 6.
inline constexpr char kOneMode[] = R"(jobs (incl. supersource/sink ):  5
  - renewable                 :  1   R
  - nonrenewable              :  0   N
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   3
   2        1          1           4
   3        1          1           4
   4        1          1           5
   5        1          0
************************************************************************
REQUESTS/DURATIONS:
jobnr. mode duration  R 1
------------------------------------------------------------------------
  1      1     0       0
  2      1     3       1
  3      1     4       1
  4      1     2       0
  5      1     0       0
************************************************************************
RESOURCEAVAILABILITIES:
  R 1
    1
)";

// Two jobs one after the other, each in 1 minute for 3 of the stock or in 5
// minutes for 1; the stock of 4 lets one of them be quick: 6 minutes; the chain is 2.
inline constexpr char kTwoModes[] = R"(jobs (incl. supersource/sink ):  4
  - renewable                 :  1   R
  - nonrenewable              :  1   N
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          1           2
   2        2          1           3
   3        2          1           4
   4        1          0
************************************************************************
REQUESTS/DURATIONS:
jobnr. mode duration  R 1  N 1
------------------------------------------------------------------------
  1      1     0       0    0
  2      1     1       1    3
         2     5       0    1
  3      1     1       1    3
         2     5       0    1
  4      1     0       0    0
************************************************************************
RESOURCEAVAILABILITIES:
  R 1  N 1
    1    4
)";

// Job 2 starts at least 2 and at most 3 after job 1 starts. Each lasts 2: 4 minutes.
inline constexpr char kLags[] =
    "2\t1\t0\t0\n"
    "0\t1\t1\t1\t[0]\n"
    "1\t1\t1\t2\t[2]\n"
    "2\t1\t2\t1\t3\t[-3]\t[2]\n"
    "3\t1\t0\n"
    "0\t1\t0\t0\n"
    "1\t1\t2\t1\n"
    "2\t1\t2\t1\n"
    "3\t1\t0\t0\n"
    "1\n";

// The same with jobs of 4: one machine can't do the second within 3 minutes of the first's start.
inline constexpr char kUnsatLags[] =
    "2\t1\t0\t0\n"
    "0\t1\t1\t1\t[0]\n"
    "1\t1\t1\t2\t[2]\n"
    "2\t1\t2\t1\t3\t[-3]\t[4]\n"
    "3\t1\t0\n"
    "0\t1\t0\t0\n"
    "1\t1\t4\t1\n"
    "2\t1\t4\t1\n"
    "3\t1\t0\t0\n"
    "1\n";

}  // namespace suppertide::planning::psplib
