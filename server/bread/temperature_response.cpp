#include "server/bread/temperature_response.h"
