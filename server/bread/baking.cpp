#include "server/bread/baking.h"
