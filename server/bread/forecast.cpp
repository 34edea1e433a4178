#include "server/bread/forecast.h"
