// The small dinner with a loaf in place of its rolls: levain, poolish, a seed soaker and a lid.
#pragma once

#include "suppertide/v1/bundle.pb.h"

namespace suppertide::compose {

v1::Bundle dinnerWithLoaf();

}  // namespace suppertide::compose
