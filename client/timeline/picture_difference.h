// Which steps another picture shows elsewhere.
#pragma once

#include <QtCore/qset.h>

#include "client/timeline/picture.h"

namespace suppertide {

// Ids of the steps of `next` that are new, or stand in `before` at another time or in other lanes.
QSet<QString> movedSteps(const Picture& before, const Picture& next);
// Puts into the lanes of `next` where the steps of `ids` stand in `before`.
void addGhosts(const Picture& before, const QSet<QString>& ids, Picture& next);
// How many steps of `before` are no more in `next`.
int goneSteps(const Picture& before, const Picture& next);

}  // namespace suppertide
