#include "server/bread/fermentation.h"
