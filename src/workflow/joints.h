#pragma once
#include <catalog/engines.h>
#include <catalog/joints.h>
#include <catalog/senders.h>
#include <joint/port.h>
#include <joint/terminal.h>
#include <joint/thread.h>

/// From the catalogue's rows to the values the joint room judges.
namespace ohmkin::workflow {

joint::Thread threadOf(const catalog::Thread& record);
joint::Terminal terminalOf(const catalog::Terminal& record);
joint::Pigtail pigtailOf(const catalog::Pigtail& record);
joint::Bushing bushingOf(const catalog::Adapter& record);
joint::SenderBody bodyOf(const catalog::Sender& sender, const catalog::Thread* thread);

}  // namespace ohmkin::workflow
