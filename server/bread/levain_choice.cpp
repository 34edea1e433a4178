#include "server/bread/levain_choice.h"
