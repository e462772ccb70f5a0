#include "witnessmark/store/workplace.h"

#include <nlohmann/json.hpp>

#include "store/connection.h"

namespace witnessmark {
namespace {

constexpr std::size_t kLargest = std::size_t{64} << 10;

/// Commits do not wait for the disk while it lives. In write-ahead mode the file stays whole all the same.
class Unhurried {
 public:
  explicit Unhurried(Database& database) : database_(database) {
    database_.run("PRAGMA synchronous = NORMAL");
  }
  ~Unhurried() { database_.run("PRAGMA synchronous = FULL"); }
  Unhurried(const Unhurried&) = delete;
  Unhurried& operator=(const Unhurried&) = delete;

 private:
  Database& database_;
};

void write(StoreConnection& connection, std::string_view coder, std::string_view json) {
  connection.prepared("INSERT INTO workplaces VALUES (?1, ?2) ON CONFLICT (coder) DO UPDATE SET json = ?2")
      .bind(coder)
      .bind(json)
      .run();
}

}  // namespace

Result<void> save_workplace(SiteFile& site, std::string_view coder, std::string_view json) {
  StoreConnection& connection = site.connection();
  connection.require_editor();
  const auto parsed = json.size() > kLargest ? nlohmann::json() : nlohmann::json::parse(json, nullptr, false);
  if (!parsed.is_object())
    return Error{"", 0, 0, "where a coder stands is no JSON object, or over 64 KiB", "give a JSON object"};
  if (connection.depth > 0) {
    write(connection, coder, json);
    return {};
  }
  const Unhurried unhurried(*connection.database);
  write(connection, coder, json);
  return {};
}

std::optional<std::string> load_workplace(const SiteFile& site, std::string_view coder) {
  SqlStatement& select = site.connection().prepared("SELECT json FROM workplaces WHERE coder = ?");
  std::optional<std::string> json;
  if (select.bind(coder).step()) json = select.text(0);
  select.reset();
  return json;
}

}  // namespace witnessmark
