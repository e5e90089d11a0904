<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>ohmkin::app::BackupSheet</name>
    <message numerus="yes">
        <source>%n change(s)</source>
        <translation>
            <numerusform>%n change</numerusform>
            <numerusform>%n changes</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n movement(s) of the shelf</source>
        <translation>
            <numerusform>%n movement of the shelf</numerusform>
            <numerusform>%n movements of the shelf</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ohmkin::fault::FaultPage</name>
    <message numerus="yes">
        <source>What this circuit does not have was left out (%n).</source>
        <translation>
            <numerusform>What this circuit does not have was left out (%n).</numerusform>
            <numerusform>What this circuit does not have was left out (%n).</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ohmkin::jobs::JobsPage</name>
    <message numerus="yes">
        <source>%n jobs</source>
        <translation>
            <numerusform>%n job</numerusform>
            <numerusform>%n jobs</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n jobs found</source>
        <translation>
            <numerusform>%n job found</numerusform>
            <numerusform>%n jobs found</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::CurvePlot</name>
    <message numerus="yes">
        <source>%n reading(s)</source>
        <translation>
            <numerusform>%n reading</numerusform>
            <numerusform>%n readings</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::CataloguePage</name>
    <message numerus="yes">
        <source>%n found, best first</source>
        <translation>
            <numerusform>%n found</numerusform>
            <numerusform>%n found, best first</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::FoundList</name>
    <message numerus="yes">
        <source>%n on the shelf</source>
        <translation>
            <numerusform>%n on the shelf</numerusform>
            <numerusform>%n on the shelf</numerusform>
        </translation>
    </message>
</context>
</TS>
