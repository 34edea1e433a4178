// Pages of lists that are at hand as a whole, in an order of their own.
#pragma once

#include <algorithm>
#include <string>

#include "absl/strings/str_cat.h"
#include "server/service/document_calls.h"

namespace suppertide::service {

// Gives `add` what comes after the request's page_token, as much as its page_size allows, and the answer its
// next_page_token. `keyOf` is a text for each item by which they are sorted, and no two have the same: a
// token holds what is added or gone between two pages.
template <typename Request, typename Answer, typename Items, typename KeyOf, typename Add>
Failure tellPage(const Request& asked, Answer& answer, const Items& items, const KeyOf& keyOf,
                 const Add& add) {
  if (asked.page_size() < 0)
    return invalidField("pageSize", absl::StrCat(asked.page_size()), "must be 0 or more");
  auto next = std::find_if(items.begin(), items.end(),
                           [&](const auto& item) { return keyOf(item) > asked.page_token(); });
  std::string last;
  for (int left = pageSize(asked.page_size()); left > 0 && next != items.end(); --left, ++next) {
    add(*next);
    last = keyOf(*next);
  }
  if (next != items.end()) answer.set_next_page_token(last);
  return {};
}

}  // namespace suppertide::service
