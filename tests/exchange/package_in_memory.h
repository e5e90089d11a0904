#pragma once
#include <exchange/package.h>
#include <list>
#include <map>
#include <string>

/// A small sound package to be spoilt in one place at a time. Every name in it is made up.
namespace ohmkin::test {

class PackageInMemory {
 public:
  PackageInMemory() {
    set("source.csv", "id,kind,citation,confidence\nd,demo,made up,0.5\n");
    set("thread.csv",
        "id,standard,form,flank_angle,pitch,diameter,tapered,source\n"
        "1/4-18 NPT,ASME B1.20.1,NPT,60,1.4111,13.616,1,d\nM12x1.5,ISO 261,M,60,1.5,12,false,d\n");
    set("adapter.csv", "id,port,sender,immersion_lost,source\nAD-1,1/4-18 NPT,M12x1.5,6.5,d\n");
    set("family.csv",
        "id,name,measurand,direction,tolerance,cold_ohms,hot_ohms,cold_low,cold_high,hot_low,hot_high,source\n"
        "fa,Family A,coolant temperature,falling,0.08,700,90,20,40,100,120,d\n");
    set("date_layout.csv", "id,name,found_on,example,example_date,source\ndl,letter first,head,H 22 1,1971-08-22,d\n");
    set("date_field.csv", "layout,ordinal,kind,text,optional\ndl,1,month letter,,0\ndl,2,separator,\" \",1\n");
    set("curve.csv",
        "id,family,sender,model,coefficients,valid_low,valid_high,source\nca,fa,,beta,620.0 313.15 3.72e3,20,120,d\n");
    describe();
  }

  void set(const std::string& name, std::string text) { files_[name] = std::move(text); }
  void remove(const std::string& name) { files_.erase(name); }
  /// Puts `by` in the place of the first `what`, which must be there.
  void replace(const std::string& file, const std::string& what, const std::string& by) {
    std::string& text = files_.at(file);
    text.replace(text.find(what), what.size(), by);
  }
  void describe(const std::string& name = "small", const std::string& version = "1.0.0") {
    std::string resources;
    for (const auto& [file, text] : files_)
      if (file.ends_with(".csv"))
        resources += (resources.empty() ? "" : ", ") +
                     ("{\"name\": \"" + file.substr(0, file.size() - 4) + "\", \"path\": \"" + file + "\"}");
    set("datapackage.json", "{\"name\": \"" + name + "\", \"title\": \"Small\", \"version\": \"" + version +
                                "\",\n \"licenses\": [{\"name\": \"CC0-1.0\"}],\n \"resources\": [" + resources + "]}");
  }
  [[nodiscard]] const std::map<std::string, std::string>& files() const { return files_; }
  [[nodiscard]] exchange::PackageSource source() const {
    std::vector<exchange::PackageFile> files;
    files.reserve(files_.size());
    for (const auto& [name, text] : files_) files.push_back({name, text});
    return exchange::PackageSource::memory(std::move(files));
  }

 private:
  std::map<std::string, std::string> files_;
};

}  // namespace ohmkin::test
