#include "server/bread/dough.h"
