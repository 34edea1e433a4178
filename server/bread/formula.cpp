#include "server/bread/formula.h"
