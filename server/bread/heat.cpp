#include "server/bread/heat.h"
