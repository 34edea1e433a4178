// The way back from what this person did last, one change after the other.
#pragma once

#include <google/protobuf/message.h>

#include <QtCore/qstring.h>

#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "client/link/edit.h"
#include "client/link/replica.h"

namespace suppertide {

class UndoStack {
 public:
  // `before`: the replica the change was made from; `text`: what it was, for people.
  void add(std::int64_t number, const google::protobuf::Message& request, const link::Replica& before,
           const QString& text);
  // A change that was made by a call, in the household revision `revision`: `back` takes it back while nobody
  // has changed any of `touched`, by kind and id, since.
  using Documents = std::vector<std::pair<std::string, std::string>>;
  void add(const QString& text, std::int64_t revision, Documents touched, std::function<void()> back);
  void taken(std::int64_t number, const google::protobuf::Message& answer);
  void drop(std::int64_t number);
  // Forgets changes that somebody else has changed since; `base` is what the server told.
  void check(const link::Replica& base);

  bool empty() const { return steps_.empty(); }
  QString text() const { return steps_.empty() ? QString() : steps_.back().text; }
  // The request that takes the last change back, aimed at what is shown now; the change is forgotten.
  // Null where it is taken back by a call, which then is made, or where there is none.
  std::unique_ptr<google::protobuf::Message> take(const link::Replica& shown);

 private:
  struct Step {
    std::int64_t number = 0;
    link::Edit edit;
    std::unique_ptr<google::protobuf::Message> inverse;
    QString text;
    bool taken = false;
    std::string etag{};         // of the version that the change made; once taken
    std::int64_t revision = 0;  // that it was made in
    Documents touched{};
    std::function<void()> back{};  // in place of `inverse`
  };
  void push(Step step);
  bool isStale(const Step& step, const link::Replica& base) const;

  std::vector<Step> steps_;
};

}  // namespace suppertide
