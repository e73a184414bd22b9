// A formula with its numbers.
#include <fmt/format.h>

#include "explain/words.hpp"
#include "explain/worksheet.hpp"

namespace headgate::explain {

using expression::Op;
using quantity::Truth;

namespace {

// How tightly a form binds; a part that binds less than its place asks for is bracketed.
enum Binding : int { loose, summed, product, atom };

bool is_number(const Evaluated& of) { return of.type.kind == vocabulary::Type::Kind::number; }

std::string number(const Evaluated& of) {
  if (of.value.number.everything()) return "?";
  return quantity::show_rounded(of.value.number, of.type.dimension, figures, of.value.unit);
}

std::string plain(const Context& context, const Evaluated& of) {
  if (of.value.presence == vocabulary::Presence::unknown) return "?";
  return is_number(of) ? number(of) : shown(context, of);
}

class Filler {
 public:
  // `top`: a look-up is what there is to see, and not a number in a larger formula.
  explicit Filler(const Context& context, bool top) : context_(context), top_(top) {}

  std::string at(const Evaluated& of, int asked) const {
    int binds = atom;
    const std::string words = text(of, binds);
    return binds < asked ? "(" + words + ")" : words;
  }

 private:
  static const expression::Node& node(const Evaluated& of) { return of.tree->nodes[of.node]; }

  std::string binary(const Evaluated& of, const char* sign, int own, int& binds) const {
    binds = own;
    return at(of.kids[0], own) + sign + at(of.kids[1], own + 1);
  }

  std::string list(const Evaluated& of, const std::string& name, std::size_t first = 0) const {
    std::string words;
    for (std::size_t i = first; i < of.kids.size(); ++i) words += (words.empty() ? "" : ", ") + at(of.kids[i], loose);
    return name + words;
  }

  // Of a sum and its like, the values of the elements that count.
  std::vector<const Evaluated*> counted(const Evaluated& of) const {
    std::vector<const Evaluated*> values;
    const bool where = node(of).kids.size() > 1 && node(of).kids[1] != expression::no_node;
    const std::size_t step = where ? 2 : 1;
    for (std::size_t i = 0; i + step <= of.kids.size(); i += step) {
      if (!where || of.kids[i + 1].truth() != Truth::no) values.push_back(&of.kids[i]);
    }
    return values;
  }

  std::string total(const Evaluated& of, int& binds) const {
    const auto values = counted(of);
    if (values.empty()) return plain(context_, of);
    binds = values.size() > 1 ? summed : product;
    std::string words;
    for (const auto* value : values) words += (words.empty() ? "" : " + ") + at(*value, product);
    return words;
  }

  std::string extreme(const Evaluated& of, const char* name) const {
    std::string words;
    for (const auto* value : counted(of)) words += (words.empty() ? "" : ", ") + at(*value, loose);
    return fmt::format("{}({})", name, words);
  }

  std::string chosen(const Evaluated& of, int& binds) const {
    const Truth truth = of.kids[0].truth();
    if (truth != Truth::undecided) return text(of.kids[truth == Truth::yes ? 1 : 2], binds);
    binds = loose;
    return at(of.kids[1], loose) + " or " + at(of.kids[2], loose);
  }

  std::string table_words(const Evaluated& of) const {
    const bool of_limit = node(of).index == vocabulary::no_id;
    const std::string name = of_limit ? context_.book->limits[static_cast<std::size_t>(of.limit)].signature.name
                                      : context_.book->tables[static_cast<std::size_t>(of.table)].signature.name;
    return list(of, name + "[", of_limit ? 1 : 0) + "]";
  }

  std::string text(const Evaluated& of, int& binds) const {
    switch (node(of).op) {
      case Op::add:
        if (changes_nothing(of.kids[0], Op::literal, 0)) return text(of.kids[1], binds);  // it sets the unit
        return binary(of, " + ", summed, binds);
      case Op::subtract: return binary(of, " - ", summed, binds);
      case Op::multiply:
        for (const std::size_t one : {0U, 1U}) {  // it brings a source
          if (changes_nothing(of.kids[one], Op::limit, 1)) return text(of.kids[1 - one], binds);
        }
        return binary(of, " * ", product, binds);
      case Op::divide: return binary(of, " / ", product, binds);
      case Op::negate: return "-" + at(of.kids[0], atom);
      case Op::least: return list(of, "least(") + ")";
      case Op::greatest: return list(of, "greatest(") + ")";
      case Op::sum: return total(of, binds);
      case Op::least_of: return extreme(of, "least");
      case Op::greatest_of: return extreme(of, "greatest");
      case Op::choose: return chosen(of, binds);
      case Op::call: return list(of, std::string(name_of_call(of)) + "(") + ")";
      case Op::look_up: return top_ ? table_words(of) : plain(context_, of);
      case Op::limit: {
        // A value that is itself a sum of others: the sum is what there is to see.
        const auto& signature = context_.book->limits[static_cast<std::size_t>(of.limit)].signature;
        const bool whole = signature.by_choice == vocabulary::no_id && of.chain >= 0 && !of.kids.empty();
        const bool formula = whole && node(of.kids.back()).op != Op::literal && is_number(of.kids.back());
        return formula ? text(of.kids.back(), binds) : plain(context_, of);
      }
      default: return plain(context_, of);
    }
  }

  static bool changes_nothing(const Evaluated& of, Op op, double value) {
    return node(of).op == op && is_number(of) && of.value.number == quantity::exactly(value);
  }

  static std::string name_of_call(const Evaluated& of) { return node(of).name; }

  const Context& context_;
  bool top_ = false;
};

}  // namespace

std::string filled(const Context& context, const Evaluated& of) {
  const Evaluated* root = &of;
  while (root->tree->nodes[root->node].op == Op::choose && root->kids[0].truth() != Truth::undecided) {
    root = &root->kids[root->kids[0].truth() == Truth::yes ? 1 : 2];
  }
  return Filler(context, root->tree->nodes[root->node].op == Op::look_up).at(of, loose);
}

}  // namespace headgate::explain
