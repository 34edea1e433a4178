#include "server/bread/levain_build.h"
