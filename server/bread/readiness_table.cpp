#include "server/bread/readiness_table.h"
