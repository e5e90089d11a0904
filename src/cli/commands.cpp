#include <cli/backup_command.h>
#include <cli/bench_command.h>
#include <cli/bench_equipment_command.h>
#include <cli/date_command.h>
#include <cli/demo_command.h>
#include <cli/dial_command.h>
#include <cli/edit_command.h>
#include <cli/fault_command.h>
#include <cli/fit_command.h>
#include <cli/import_command.h>
#include <cli/job_command.h>
#include <cli/layout_command.h>
#include <cli/log_command.h>
#include <cli/match_command.h>
#include <cli/movement_command.h>
#include <cli/pack_command.h>
#include <cli/pair_command.h>
#include <cli/plan_command.h>
#include <cli/search_command.h>
#include <cli/show_command.h>
#include <cli/stock_command.h>
#include <cli/trim_command.h>

namespace ohmkin::cli {

Commands allCommands() {
  Commands commands;
  commands.push_back(std::make_unique<MatchCommand>());
  commands.push_back(std::make_unique<PairCommand>());
  commands.push_back(std::make_unique<TrimCommand>());
  commands.push_back(std::make_unique<DialCommand>());
  commands.push_back(std::make_unique<FaultCommand>());
  commands.push_back(std::make_unique<FitCommand>());
  commands.push_back(std::make_unique<BenchCommand>());
  commands.push_back(std::make_unique<EquipmentCommand>());
  commands.push_back(std::make_unique<ImportCommand>());
  commands.push_back(std::make_unique<MovementCommand>());
  commands.push_back(std::make_unique<DateCommand>());
  commands.push_back(std::make_unique<LayoutCommand>());
  commands.push_back(std::make_unique<PlanCommand>());
  commands.push_back(std::make_unique<SearchCommand>());
  commands.push_back(std::make_unique<ShowCommand>());
  commands.push_back(std::make_unique<EditCommand>());
  commands.push_back(std::make_unique<LogCommand>());
  commands.push_back(std::make_unique<StockCommand>());
  commands.push_back(std::make_unique<JobCommand>());
  commands.push_back(std::make_unique<PackCommand>());
  commands.push_back(std::make_unique<BackupCommand>());
  commands.push_back(std::make_unique<DemoCommand>());
  return commands;
}

}  // namespace ohmkin::cli
