// What the tests of this folder read with: the value, or the problem as a person would see it.
#pragma once

#include <string>
#include <variant>

#include <gtest/gtest.h>

#include "quantity/coarse.hpp"

namespace headgate::quantity {

template <typename T>
T good(const Read<T>& read) {
  if (const Problem* problem = std::get_if<Problem>(&read)) {
    ADD_FAILURE() << problem->id << " at " << problem->offset;
    return T{};
  }
  return std::get<T>(read);
}

// The id; "" when there is no problem.
template <typename T>
std::string wrong(const Read<T>& read) {
  const Problem* problem = std::get_if<Problem>(&read);
  return problem == nullptr ? "" : problem->id;
}

// The drawn diagnostic, without its first place; "" when there is no problem.
template <typename T>
std::string drawn(const std::string& text, const Read<T>& read) {
  const Problem* problem = std::get_if<Problem>(&read);
  if (problem == nullptr) return "";
  text::Sources sources;
  const text::FileId file = sources.add("", text);
  const text::Range whole{file, 0, static_cast<std::uint32_t>(text.size())};
  return text::draw(told(*problem, whole), sources);
}

inline double si(std::string_view text, std::optional<Dimension> wanted = std::nullopt) {
  return good(read_quantity(text, wanted)).si;
}

}  // namespace headgate::quantity
