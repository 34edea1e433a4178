#include "server/bread/water_temperature.h"
