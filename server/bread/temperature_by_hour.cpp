#include "server/bread/temperature_by_hour.h"
