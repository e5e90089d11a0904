#pragma once
#include <catalog/gauges.h>
#include <gauge/box_reading.h>
#include <string>
#include <vector>

/// Decade-box readings as words of a command line.
namespace ohmkin::cli {

/// "120=35", "0=70>" on the right stop, "open=<-66" on the left one, "60=mark:H" at a mark of the dial, "60=22@10.5"
/// fed by 10.5 V: ohms of the box, the needle in degrees clockwise from straight up. `marks` are those of the dial,
/// empty where none is known; `uncertainty` of the needle in degrees.
Expected<gauge::BoxReading> boxReading(const std::string& word, const std::vector<catalog::DialMark>& marks,
                                       double uncertainty);
std::string boxName(Ohms box);  ///< "open", "grounded", "120 Ω"

}  // namespace ohmkin::cli
