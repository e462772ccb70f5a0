#include "store/record/columns.h"

#include <stdexcept>

namespace witnessmark {
namespace {

std::optional<std::int64_t> number_of(const std::optional<Day>& day) {
  if (!day) return std::nullopt;
  return day->value;
}

std::optional<Day> day_of(const std::optional<std::int64_t>& number) {
  if (!number) return std::nullopt;
  return Day{*number};
}

}  // namespace

void BindColumns::bind_made(std::string text) {
  // A record has fewer dates and lists than this; growing would move texts that are already bound.
  if (made_.size() == made_.capacity()) throw std::logic_error("too many columns with texts made for them");
  statement_.bind(std::string_view(made_.emplace_back(std::move(text))));
}

void BindColumns::bind(const std::optional<Edtf>& value) {
  value ? bind_made(to_string(*value)) : static_cast<void>(statement_.bind_null());
}

void BindColumns::bind(const Dated& dated) {
  statement_.bind(dated.written);
  bind(dated.value);
  statement_.bind(word_for(dated.calendar));
}

void BindColumns::bind(const Boundary& boundary) {
  statement_.bind(word_for(boundary.kind))
      .bind(number_of(boundary.earliest))
      .bind(number_of(boundary.latest));
}

void BindColumns::bind(const std::optional<Period>& period) {
  if (period) {
    bind(period->begin);
    bind(period->end);
  } else {
    for (int i = 0; i < 6; ++i) statement_.bind_null();
  }
}

void BindColumns::bind(const std::optional<Quantity>& quantity) {
  if (quantity) {
    statement_.bind(quantity->least).bind(quantity->most).bind(quantity->written);
  } else {
    for (int i = 0; i < 3; ++i) statement_.bind_null();
  }
}

void ReadColumns::read(std::optional<Millisecond>& time) {
  const auto number = row_.maybe_integer(at_++);
  time = number ? std::optional(Millisecond{*number}) : std::nullopt;
}

void ReadColumns::read(std::optional<Edtf>& value) {
  value.reset();
  if (!row_.is_null(at_)) {
    auto parsed = parse_edtf(row_.text_view(at_));
    if (!parsed) throw std::runtime_error("site file: not an EDTF date: " + row_.text(at_));
    value = std::move(parsed).value();
  }
  ++at_;
}

void ReadColumns::read(Dated& dated) {
  read(dated.written);
  read(dated.value);
  dated.calendar = value_for<Calendar>(row_.text_view(at_++));
}

Boundary ReadColumns::read_boundary() {
  Boundary boundary;
  boundary.kind = value_for<Boundary::Kind>(row_.text_view(at_));
  boundary.earliest = day_of(row_.maybe_integer(at_ + 1));
  boundary.latest = day_of(row_.maybe_integer(at_ + 2));
  at_ += 3;
  return boundary;
}

void ReadColumns::read(std::optional<Period>& period) {
  if (row_.is_null(at_)) {
    period.reset();
    at_ += 6;
    return;
  }
  const Boundary begin = read_boundary();
  period = Period{begin, read_boundary()};
}

void ReadColumns::read(std::optional<Quantity>& quantity) {
  if (row_.is_null(at_)) {
    quantity.reset();
  } else {
    quantity = Quantity{row_.integer(at_), row_.integer(at_ + 1), row_.text(at_ + 2)};
  }
  at_ += 3;
}

}  // namespace witnessmark
