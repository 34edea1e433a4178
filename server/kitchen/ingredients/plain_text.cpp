#include "server/kitchen/ingredients/plain_text.h"

#include <algorithm>

namespace suppertide::kitchen {
namespace {

constexpr std::string_view kSpaces = " \t\r\n";

char lowerLetter(char letter) {
  return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

bool same(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return lowerLetter(x) == lowerLetter(y); });
}

}  // namespace

std::string lowerCase(std::string_view text) {
  std::string lower(text);
  std::transform(lower.begin(), lower.end(), lower.begin(), lowerLetter);
  return lower;
}

std::string_view trimmedFront(std::string_view text) {
  text.remove_prefix(std::min(text.find_first_not_of(kSpaces), text.size()));
  return text;
}

std::string_view trimmed(std::string_view text) {
  text = trimmedFront(text);
  const std::size_t last = text.find_last_not_of(kSpaces);
  return last == std::string_view::npos ? std::string_view() : text.substr(0, last + 1);
}

std::vector<std::string_view> allParts(std::string_view text, char separator) {
  std::vector<std::string_view> found;
  while (true) {
    const std::size_t at = text.find(separator);
    found.push_back(text.substr(0, at));
    if (at == std::string_view::npos) return found;
    text.remove_prefix(at + 1);
  }
}

std::vector<std::string_view> parts(std::string_view text, char separator) {
  std::vector<std::string_view> found;
  for (const std::string_view part : allParts(text, separator))
    if (const std::string_view word = trimmed(part); !word.empty()) found.push_back(word);
  return found;
}

bool beginsWith(std::string_view text, std::string_view start) {
  return text.size() >= start.size() && same(text.substr(0, start.size()), start);
}

bool finishesWith(std::string_view text, std::string_view finish) {
  return text.size() >= finish.size() && same(text.substr(text.size() - finish.size()), finish);
}

bool takeFront(std::string_view& text, std::string_view start) {
  if (!beginsWith(text, start)) return false;
  text.remove_prefix(start.size());
  return true;
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  std::string text;
  for (const std::string& word : words) {
    if (!text.empty()) text += between;
    text += word;
  }
  return text;
}

std::string singleSpaced(std::string_view text) {
  std::vector<std::string> words;
  for (const std::string_view word : parts(text, ' ')) words.emplace_back(word);
  return joined(words, " ");
}

std::string replaced(std::string text, std::string_view what, std::string_view with) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size()))
    text.replace(at, what.size(), with);
  return text;
}

}  // namespace suppertide::kitchen
