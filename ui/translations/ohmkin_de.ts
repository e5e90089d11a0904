<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>Fit</name>
    <message>
        <source>fits</source>
        <translation>passt</translation>
    </message>
    <message>
        <source>fits with something added</source>
        <translation>passt mit einem Zusatzteil</translation>
    </message>
    <message>
        <source>misreads or does not fit</source>
        <translation>zeigt falsch oder passt nicht</translation>
    </message>
    <message>
        <source>not known: look</source>
        <translation>nicht bekannt: nachsehen</translation>
    </message>
</context>
<context>
    <name>Pages</name>
    <message>
        <source>Match</source>
        <translation>Zuordnen</translation>
    </message>
    <message>
        <source>Date</source>
        <translation>Datieren</translation>
    </message>
    <message>
        <source>Plan</source>
        <translation>Planen</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>Fault</source>
        <translation>Störung</translation>
    </message>
    <message>
        <source>Catalogue</source>
        <translation>Katalog</translation>
    </message>
    <message>
        <source>Jobs</source>
        <translation>Aufträge</translation>
    </message>
</context>
<context>
    <name>QAction</name>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
</context>
<context>
    <name>QApplication</name>
    <message>
        <source>Which temperature sender joins this dash gauge to that engine.

Example: ohmkin-window demo.ohmkin</source>
        <translation>Welcher Temperaturgeber verbindet diese Anzeige mit jenem Motor.

Beispiel: ohmkin-window demo.ohmkin</translation>
    </message>
    <message>
        <source>catalogue to open; otherwise the one used last</source>
        <translation>zu öffnender Katalog; sonst der zuletzt benutzte</translation>
    </message>
</context>
<context>
    <name>Refusal</name>
    <message>
        <source>found %1</source>
        <translation>gefunden: %1</translation>
    </message>
    <message>
        <source>expected %1</source>
        <translation>erwartet: %1</translation>
    </message>
</context>
<context>
    <name>SourceBox</name>
    <message>
        <source>Left out, one is made of what it is a source of.</source>
        <translation>Bleibt sie weg, entsteht eine aus dem, wofür sie Quelle ist.</translation>
    </message>
</context>
<context>
    <name>ohmkin::app</name>
    <message>
        <source>%1 and %2</source>
        <translation>%1 und %2</translation>
    </message>
    <message>
        <source>before the first change of a day</source>
        <translation>vor der ersten Änderung eines Tages</translation>
    </message>
    <message>
        <source>before an update</source>
        <translation>vor einer Umstellung</translation>
    </message>
    <message>
        <source>by hand</source>
        <translation>von Hand</translation>
    </message>
    <message>
        <source>before going back</source>
        <translation>vor dem Zurückgehen</translation>
    </message>
    <message>
        <source>The catalogue, which is not there now, is put back as it was on %1.</source>
        <translation>Der Katalog, der jetzt nicht da ist, wird so zurückgelegt, wie er am %1 war.</translation>
    </message>
    <message>
        <source>The catalogue goes back to %1; what stands in it now does not read, so that nobody can say what would be lost.</source>
        <translation>Der Katalog geht zurück auf %1; was jetzt darin steht, ist nicht lesbar, sodass niemand sagen kann, was verloren ginge.</translation>
    </message>
    <message>
        <source>The catalogue goes back to %1: nothing is lost</source>
        <translation>Der Katalog geht zurück auf %1: nichts geht verloren</translation>
    </message>
    <message>
        <source>The catalogue goes back to %1 and loses %2, the newest of %3</source>
        <translation>Der Katalog geht zurück auf %1 und verliert %2, die letzte vom %3</translation>
    </message>
    <message>
        <source>; it gets back %1</source>
        <translation>; er bekommt %1 zurück</translation>
    </message>
    <message>
        <source>The catalogue is as it was on %1.</source>
        <translation>Der Katalog ist, wie er am %1 war.</translation>
    </message>
    <message>
        <source>What was there before is kept as the newest backup.</source>
        <translation>Was vorher da war, ist als neueste Sicherung aufgehoben.</translation>
    </message>
    <message>
        <source>%1 rows were saved.</source>
        <translation>%1 Zeilen wurden gerettet.</translation>
    </message>
    <message>
        <source>%1: %2 rows saved</source>
        <translation>%1: %2 Zeilen gerettet</translation>
    </message>
    <message>
        <source>, %1 left out that break a rule or lack what they refer to</source>
        <translation>, %1 weggelassen, die einer Regel widersprechen oder sich auf Fehlendes beziehen</translation>
    </message>
    <message>
        <source>; others may be lost</source>
        <translation>; andere sind vielleicht verloren</translation>
    </message>
    <message>
        <source>Nothing was lost.</source>
        <translation>Nichts ging verloren.</translation>
    </message>
</context>
<context>
    <name>ohmkin::app::ActionList</name>
    <message>
        <source>What can be done</source>
        <translation>Was getan werden kann</translation>
    </message>
    <message>
        <source>What would you like to do?</source>
        <translation>Was möchten Sie tun?</translation>
    </message>
    <message>
        <source>Actions found</source>
        <translation>Gefundene Befehle</translation>
    </message>
    <message>
        <source>Nothing here is called so. Fewer letters find more.</source>
        <translation>So heißt hier nichts. Weniger Buchstaben finden mehr.</translation>
    </message>
</context>
<context>
    <name>ohmkin::app::ActionRows</name>
    <message>
        <source>chosen</source>
        <translation>gewählt</translation>
    </message>
</context>
<context>
    <name>ohmkin::app::BackupSheet</name>
    <message>
        <source>Backups</source>
        <translation>Sicherungen</translation>
    </message>
    <message>
        <source>There is no backup yet. One is made before the first change of a day, and whenever you make one.</source>
        <translation>Noch gibt es keine Sicherung. Eine wird vor der ersten Änderung eines Tages gemacht, und wann immer Sie eine machen.</translation>
    </message>
    <message>
        <source>Backups, newest first</source>
        <translation>Sicherungen, neueste zuerst</translation>
    </message>
    <message>
        <source>&amp;Save what still reads…</source>
        <translation>Lesbares &amp;retten…</translation>
    </message>
    <message>
        <source>&amp;Go back</source>
        <translation>Z&amp;urückgehen</translation>
    </message>
    <message>
        <source>&amp;Leave it as it is</source>
        <translation>So &amp;lassen</translation>
    </message>
    <message>
        <source>&amp;Undo: back to what was there…</source>
        <translation>&amp;Rückgängig: zurück zum Vorherigen…</translation>
    </message>
    <message>
        <source>&amp;Open the new file</source>
        <translation>&amp;Neue Datei öffnen</translation>
    </message>
    <message>
        <source>Go &amp;back to it…</source>
        <translation>&amp;Zu dieser zurück…</translation>
    </message>
    <message>
        <source>&amp;Make a backup now</source>
        <translation>&amp;Jetzt sichern</translation>
    </message>
    <message>
        <source>C&amp;heck all</source>
        <translation>Alle &amp;prüfen</translation>
    </message>
    <message>
        <source>&amp;Close</source>
        <translation>S&amp;chließen</translation>
    </message>
    <message>
        <source>Backups of %1</source>
        <translation>Sicherungen von %1</translation>
    </message>
    <message>
        <source>They lie beside it, in %1. Keep a copy on another disk too: these go with this one.</source>
        <translation>Sie liegen daneben, in %1. Heben Sie auch eine auf einer anderen Platte auf: diese gehen mit dieser verloren.</translation>
    </message>
    <message>
        <source>Taken</source>
        <translation>Vom</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Warum</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>Whole?</source>
        <translation>Heil?</translation>
    </message>
    <message>
        <source>not looked at</source>
        <translation>nicht angesehen</translation>
    </message>
    <message>
        <source>damaged</source>
        <translation>beschädigt</translation>
    </message>
    <message>
        <source>whole</source>
        <translation>heil</translation>
    </message>
    <message>
        <source>is being read …</source>
        <translation>wird gelesen …</translation>
    </message>
    <message>
        <source>As it is now it is kept as a backup first, so that this can be undone.</source>
        <translation>So wie er jetzt ist, wird er zuvor als Sicherung aufgehoben, damit dies rückgängig gemacht werden kann.</translation>
    </message>
    <message>
        <source>Not saved yet, and given up: %1.</source>
        <translation>Noch nicht gespeichert und damit aufgegeben: %1.</translation>
    </message>
    <message>
        <source>Backup made: %1, %2.</source>
        <translation>Gesichert: %1, %2.</translation>
    </message>
    <message>
        <source>Going back …</source>
        <translation>Wird zurückgelegt …</translation>
    </message>
    <message>
        <source>Not gone back. %1</source>
        <translation>Nicht zurückgegangen. %1</translation>
    </message>
    <message>
        <source>Where to save what still reads</source>
        <translation>Wohin das Lesbare gerettet wird</translation>
    </message>
    <message>
        <source>%1-saved.ohmkin</source>
        <translation>%1-gerettet.ohmkin</translation>
    </message>
    <message>
        <source>What still reads is being saved …</source>
        <translation>Was noch lesbar ist, wird gerettet …</translation>
    </message>
    <message>
        <source>Saved as %1.</source>
        <translation>Gespeichert als %1.</translation>
    </message>
    <message numerus="yes">
        <source>%n change(s)</source>
        <translation>
            <numerusform>%n Änderung</numerusform>
            <numerusform>%n Änderungen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n movement(s) of the shelf</source>
        <translation>
            <numerusform>%n Bewegung des Lagers</numerusform>
            <numerusform>%n Bewegungen des Lagers</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ohmkin::app::KeySheet</name>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>Find a key</source>
        <translation>Taste suchen</translation>
    </message>
    <message>
        <source>&amp;Copy as text</source>
        <translation>Als Text &amp;kopieren</translation>
    </message>
    <message>
        <source>No key does that.</source>
        <translation>Das tut keine Taste.</translation>
    </message>
</context>
<context>
    <name>ohmkin::app::Rail</name>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
</context>
<context>
    <name>ohmkin::app::Window</name>
    <message>
        <source>Ohmkin catalogues (*.ohmkin);;All files (*)</source>
        <translation>Ohmkin-Kataloge (*.ohmkin);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Change between °C and °F (Ctrl+U)</source>
        <translation>Zwischen °C und °F wechseln (Strg+U)</translation>
    </message>
    <message>
        <source>Menu</source>
        <translation>Menü</translation>
    </message>
    <message>
        <source>Catalogues, units, light and dark (F10)</source>
        <translation>Kataloge, Einheiten, hell und dunkel (F10)</translation>
    </message>
    <message>
        <source>%1 – Ohmkin</source>
        <translation>%1 – Ohmkin</translation>
    </message>
    <message>
        <source>Go to</source>
        <translation>Gehe zu</translation>
    </message>
    <message>
        <source>Everywhere</source>
        <translation>Überall</translation>
    </message>
    <message>
        <source>&amp;Open catalogue…</source>
        <translation>Katalog ö&amp;ffnen…</translation>
    </message>
    <message>
        <source>&amp;New demo catalogue…</source>
        <translation>&amp;Neuer Demokatalog…</translation>
    </message>
    <message>
        <source>&amp;Copy answer as text</source>
        <translation>Antwort als Text &amp;kopieren</translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation>&amp;Rückgängig</translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation>&amp;Wiederholen</translation>
    </message>
    <message>
        <source>&amp;Find what can be done…</source>
        <translation>B&amp;efehl suchen…</translation>
    </message>
    <message>
        <source>&amp;Keys</source>
        <translation>&amp;Tasten</translation>
    </message>
    <message>
        <source>Open the menu</source>
        <translation>Menü öffnen</translation>
    </message>
    <message>
        <source>&amp;About and cautions</source>
        <translation>Ü&amp;ber Ohmkin, Vorsichtshinweise</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>Been&amp;den</translation>
    </message>
    <message>
        <source>Temperatures in °C</source>
        <translation>Temperaturen in °C</translation>
    </message>
    <message>
        <source>Temperatures in °F</source>
        <translation>Temperaturen in °F</translation>
    </message>
    <message>
        <source>Change between °C and °F</source>
        <translation>Zwischen °C und °F wechseln</translation>
    </message>
    <message>
        <source>Torques in N·m</source>
        <translation>Drehmomente in N·m</translation>
    </message>
    <message>
        <source>Torques in lbf·ft</source>
        <translation>Drehmomente in lbf·ft</translation>
    </message>
    <message>
        <source>Light or dark as the system is</source>
        <translation>Hell oder dunkel wie das System</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Hell</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Dunkel</translation>
    </message>
    <message>
        <source>&amp;Language</source>
        <translation>S&amp;prache</translation>
    </message>
    <message>
        <source>As the system is</source>
        <translation>Wie das System</translation>
    </message>
    <message>
        <source>The language changes at the next start.</source>
        <translation>Die Sprache wechselt beim nächsten Start.</translation>
    </message>
    <message>
        <source>Open a catalogue</source>
        <translation>Katalog öffnen</translation>
    </message>
    <message>
        <source>Where to put the demo catalogue</source>
        <translation>Wohin mit dem Demokatalog</translation>
    </message>
    <message>
        <source>The demo catalogue was not made. %1</source>
        <translation>Der Demokatalog wurde nicht angelegt. %1</translation>
    </message>
    <message>
        <source>Ohmkin %1

Which temperature sender joins this dash gauge to that engine.

Let the engine cool before you open anything: coolant under pressure scalds. Disconnect the battery before you work behind the dash: a shorted feed burns wires. Keep sparks away from fuel vapour.

The gauge is an aid, a trimmed one more so. Prove it on the bench or against a thermometer. Local codes and licensed practice come first.

GPL-3.0-or-later, without any warranty.</source>
        <translation>Ohmkin %1

Welcher Temperaturgeber verbindet diese Anzeige mit jenem Motor.

Lassen Sie den Motor abkühlen, bevor Sie etwas öffnen: Kühlmittel unter Druck verbrüht. Klemmen Sie die Batterie ab, bevor Sie hinter dem Armaturenbrett arbeiten: eine kurzgeschlossene Zuleitung verbrennt Kabel. Halten Sie Funken von Kraftstoffdampf fern.

Die Anzeige ist eine Hilfe, eine mit Zusatzwiderständen erst recht. Prüfen Sie sie am Messplatz oder gegen ein Thermometer. Örtliche Vorschriften und der Fachbetrieb gehen vor.

GPL-3.0-or-later, ohne jede Gewähr.</translation>
    </message>
    <message>
        <source>&amp;Undo: %1</source>
        <translation>&amp;Rückgängig: %1</translation>
    </message>
    <message>
        <source>&amp;Redo: %1</source>
        <translation>&amp;Wiederholen: %1</translation>
    </message>
    <message>
        <source>&amp;Backups…</source>
        <translation>&amp;Sicherungen…</translation>
    </message>
    <message>
        <source>&amp;Give it up and quit</source>
        <translation>A&amp;ufgeben und beenden</translation>
    </message>
    <message>
        <source>&amp;Give it up and open %1</source>
        <translation>A&amp;ufgeben und %1 öffnen</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Not saved yet:</source>
        <translation>Noch nicht gespeichert:</translation>
    </message>
    <message>
        <source>Go &amp;back to it</source>
        <translation>&amp;Zurück dorthin</translation>
    </message>
    <message>
        <source>No catalogue is open. Open one first: its backups lie beside it.</source>
        <translation>Es ist kein Katalog offen. Öffnen Sie erst einen: seine Sicherungen liegen daneben.</translation>
    </message>
    <message>
        <source>Open recen&amp;t</source>
        <translation>&amp;Zuletzt benutzte öffnen</translation>
    </message>
</context>
<context>
    <name>ohmkin::castings</name>
    <message>
        <source>%1 read &apos;%2&apos;</source>
        <translation>%1: „%2“</translation>
    </message>
    <message>
        <source>Not settled: %1 decades are possible</source>
        <translation>Offen: %1 Jahrzehnte sind möglich</translation>
    </message>
    <message>
        <source>No date fits all of this</source>
        <translation>Kein Datum passt zu alledem</translation>
    </message>
    <message>
        <source>No date is known from this yet</source>
        <translation>Daraus ist noch kein Datum bekannt</translation>
    </message>
    <message>
        <source>Chance that it is the vehicle&apos;s first: %1.</source>
        <translation>Wahrscheinlichkeit, dass es der erste Motor des Fahrzeugs ist: %1.</translation>
    </message>
    <message>
        <source>%1s %2</source>
        <translation>%1er: %2</translation>
    </message>
    <message>
        <source>casting %1</source>
        <translation>Gussteil %1</translation>
    </message>
    <message>
        <source>as it stands</source>
        <translation>wie es dasteht</translation>
    </message>
    <message>
        <source>No date reads so</source>
        <translation>So liest sich kein Datum</translation>
    </message>
    <message>
        <source>%1 more ways to read it, less likely here</source>
        <translation>%1 weitere Lesarten, hier weniger wahrscheinlich</translation>
    </message>
    <message>
        <source>When assembled: nothing fits</source>
        <translation>Zusammenbau: nichts passt</translation>
    </message>
    <message>
        <source>Engine assembled, chance</source>
        <translation>Motor zusammengebaut, Wahrscheinlichkeit</translation>
    </message>
    <message>
        <source>Engine assembled, 9 in 10</source>
        <translation>Motor zusammengebaut, 9 von 10</translation>
    </message>
    <message>
        <source>90 %</source>
        <translation>90 %</translation>
    </message>
    <message>
        <source>Engine assembled in the %1s</source>
        <translation>Motor zusammengebaut in den %1ern</translation>
    </message>
    <message>
        <source>%1 &apos;%2&apos;</source>
        <translation>%1: „%2“</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>Lags and weights are judgement from memory, no source; the codes are your readings.</source>
        <translation>Fristen und Gewichte sind Ermessen aus dem Gedächtnis, ohne Quelle; die Codes sind Ihre Ablesungen.</translation>
    </message>
    <message>
        <source>Try: head %1 with %2, model year %3</source>
        <translation>Versuchen: Kopf %1 mit %2, Modelljahr %3</translation>
    </message>
</context>
<context>
    <name>ohmkin::castings::CastingForm</name>
    <message>
        <source>Assembly stamp</source>
        <translation>Motorstempel</translation>
    </message>
    <message>
        <source>Assembly stamp written as</source>
        <translation>Motorstempel geschrieben als</translation>
    </message>
    <message>
        <source>re-cut pad</source>
        <translation>nachgeschlagene Fläche</translation>
    </message>
    <message>
        <source>Vehicle line</source>
        <translation>Baureihe</translation>
    </message>
    <message>
        <source>Model year</source>
        <translation>Modelljahr</translation>
    </message>
    <message>
        <source>Build date</source>
        <translation>Baudatum</translation>
    </message>
    <message>
        <source>Casting</source>
        <translation>Gussteil</translation>
    </message>
    <message>
        <source>Casting number</source>
        <translation>Gussnummer</translation>
    </message>
    <message>
        <source>Date code, ? unreadable</source>
        <translation>Datumscode, ? unleserlich</translation>
    </message>
    <message>
        <source>Written as</source>
        <translation>Geschrieben als</translation>
    </message>
    <message>
        <source>The pad under the stamp was machined or stamped again: the stamp then weighs less.</source>
        <translation>Die Fläche unter dem Stempel wurde bearbeitet oder neu gestempelt: der Stempel wiegt dann weniger.</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>or build date</source>
        <translation>oder Baudatum</translation>
    </message>
    <message>
        <source>Casting %1</source>
        <translation>Gussteil %1</translation>
    </message>
    <message>
        <source>Casting number %1</source>
        <translation>Gussnummer %1</translation>
    </message>
    <message>
        <source>Date code of casting %1</source>
        <translation>Datumscode von Gussteil %1</translation>
    </message>
    <message>
        <source>Casting %1 written as</source>
        <translation>Gussteil %1 geschrieben als</translation>
    </message>
    <message>
        <source>another</source>
        <translation>weiteres</translation>
    </message>
    <message>
        <source>any stamp layout</source>
        <translation>jede Stempelschreibweise</translation>
    </message>
    <message>
        <source>casting&apos;s own</source>
        <translation>die des Gussteils</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>four digits, for example 1968</source>
        <translation>vier Ziffern, zum Beispiel 1968</translation>
    </message>
</context>
<context>
    <name>ohmkin::castings::DateAnswerView</name>
    <message>
        <source>Print…</source>
        <translation>Drucken…</translation>
    </message>
    <message>
        <source>Time line</source>
        <translation>Zeitstrahl</translation>
    </message>
    <message>
        <source>Look at it, print it, or keep it as PDF or SVG (Ctrl+P)</source>
        <translation>Ansehen, drucken oder als PDF oder SVG behalten (Strg+P)</translation>
    </message>
    <message>
        <source>Engine date</source>
        <translation>Motordatum</translation>
    </message>
    <message>
        <source>Engine assembled</source>
        <translation>Motor zusammengebaut</translation>
    </message>
    <message>
        <source>What the codes can mean</source>
        <translation>Was die Codes bedeuten können</translation>
    </message>
    <message>
        <source>As a table</source>
        <translation>Als Tabelle</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Warum</translation>
    </message>
</context>
<context>
    <name>ohmkin::castings::DatePage</name>
    <message>
        <source>What to do</source>
        <translation>Was zu tun ist</translation>
    </message>
    <message>
        <source>Read the castings</source>
        <translation>Gussteile lesen</translation>
    </message>
    <message>
        <source>Layouts</source>
        <translation>Schreibweisen</translation>
    </message>
    <message>
        <source>Type what is cast and stamped</source>
        <translation>Eingeben, was gegossen und gestempelt ist</translation>
    </message>
    <message>
        <source>Time line or table</source>
        <translation>Zeitstrahl oder Tabelle</translation>
    </message>
    <message>
        <source>Usual lags: show or hide</source>
        <translation>Übliche Fristen zeigen oder verbergen</translation>
    </message>
    <message>
        <source>Print the date sheet</source>
        <translation>Datumsblatt drucken</translation>
    </message>
    <message>
        <source>Layouts of date codes</source>
        <translation>Schreibweisen der Datumscodes</translation>
    </message>
    <message>
        <source>Read an engine&apos;s codes</source>
        <translation>Codes eines Motors lesen</translation>
    </message>
    <message>
        <source>Not enough to go on yet</source>
        <translation>Noch zu wenig</translation>
    </message>
    <message>
        <source>What can you read?</source>
        <translation>Was ist zu lesen?</translation>
    </message>
    <message>
        <source>Type a casting number, the date code beside it, or the assembly stamp. Put ? for a character you cannot read. Each head goes in a row of its own; what you know of the vehicle says whether the engine is its first.</source>
        <translation>Geben Sie eine Gussnummer, den Datumscode daneben oder den Motorstempel ein. Schreiben Sie ? für ein unleserliches Zeichen. Jeder Kopf bekommt eine eigene Zeile; was Sie vom Fahrzeug wissen, sagt, ob der Motor sein erster ist.</translation>
    </message>
    <message>
        <source>Engine date</source>
        <translation>Motordatum</translation>
    </message>
    <message>
        <source>no answer yet</source>
        <translation>noch keine Antwort</translation>
    </message>
    <message>
        <source>a casting number or a code</source>
        <translation>eine Gussnummer oder ein Code</translation>
    </message>
    <message>
        <source>engine date</source>
        <translation>Motordatum</translation>
    </message>
</context>
<context>
    <name>ohmkin::castings::LayoutBench</name>
    <message>
        <source>Layouts of this catalogue: take one to begin with</source>
        <translation>Schreibweisen dieses Katalogs: eine zum Anfangen nehmen</translation>
    </message>
    <message>
        <source>Name of the layout</source>
        <translation>Name der Schreibweise</translation>
    </message>
    <message>
        <source>Found on</source>
        <translation>Gefunden an</translation>
    </message>
    <message>
        <source>Short id</source>
        <translation>Kurzzeichen</translation>
    </message>
    <message>
        <source>Code to try</source>
        <translation>Code zum Probieren</translation>
    </message>
    <message>
        <source>month letter, day, year digit</source>
        <translation>Monatsbuchstabe, Tag, Jahresziffer</translation>
    </message>
    <message>
        <source>a code as you read it, for example H 22 1</source>
        <translation>ein Code, wie Sie ihn lesen, zum Beispiel H 22 1</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Fields, in the order they are cast</source>
        <translation>Felder, in gegossener Reihenfolge</translation>
    </message>
    <message>
        <source>Try it on a code</source>
        <translation>An einem Code probieren</translation>
    </message>
    <message>
        <source>The day that code names</source>
        <translation>Der Tag, den dieser Code nennt</translation>
    </message>
    <message>
        <source>Kind of source</source>
        <translation>Art der Quelle</translation>
    </message>
    <message>
        <source>Where you know it from</source>
        <translation>Woher Sie es wissen</translation>
    </message>
    <message>
        <source>Replace the layout that has this id</source>
        <translation>Die Schreibweise mit diesem Kurzzeichen ersetzen</translation>
    </message>
    <message>
        <source>&amp;Save as the shop&apos;s own</source>
        <translation>Als eigene &amp;speichern</translation>
    </message>
    <message>
        <source>what you saw and where, or page and table</source>
        <translation>was Sie wo gesehen haben, oder Seite und Tabelle</translation>
    </message>
    <message>
        <source>Day the code names</source>
        <translation>Tag, den der Code nennt</translation>
    </message>
    <message>
        <source>Source</source>
        <translation>Quelle</translation>
    </message>
    <message>
        <source>This layout cannot be kept. %1</source>
        <translation>Diese Schreibweise kann nicht behalten werden. %1</translation>
    </message>
    <message>
        <source>This layout writes 22 Aug 1981 as &apos;%1&apos;.</source>
        <translation>Diese Schreibweise gibt den 22. August 1981 als „%1“ wieder.</translation>
    </message>
    <message>
        <source>%1 more</source>
        <translation>%1 weitere</translation>
    </message>
    <message>
        <source>Not saved. %1</source>
        <translation>Nicht gespeichert. %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::castings::LayoutFields</name>
    <message>
        <source>00: always two digits</source>
        <translation>00: immer zwei Ziffern</translation>
    </message>
    <message>
        <source>1 to 7, or seven letters</source>
        <translation>1 bis 7, oder sieben Buchstaben</translation>
    </message>
    <message>
        <source>letters that occur; any</source>
        <translation>vorkommende Buchstaben; alle</translation>
    </message>
    <message>
        <source>the text itself</source>
        <translation>der Text selbst</translation>
    </message>
    <message>
        <source>signs that occur; any</source>
        <translation>vorkommende Zeichen; alle</translation>
    </message>
    <message>
        <source>&amp;Add a field</source>
        <translation>Feld &amp;anfügen</translation>
    </message>
    <message>
        <source>Add a field at the end</source>
        <translation>Ein Feld am Ende anfügen</translation>
    </message>
    <message>
        <source>Kind of field</source>
        <translation>Art des Feldes</translation>
    </message>
    <message>
        <source>Text of the field</source>
        <translation>Text des Feldes</translation>
    </message>
    <message>
        <source>may be left out</source>
        <translation>kann fehlen</translation>
    </message>
    <message>
        <source>Up</source>
        <translation>Hoch</translation>
    </message>
    <message>
        <source>One place earlier</source>
        <translation>Eine Stelle nach vorn</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Remove this field</source>
        <translation>Dieses Feld entfernen</translation>
    </message>
</context>
<context>
    <name>ohmkin::castings::LayoutList</name>
    <message>
        <source>Layouts of this catalogue</source>
        <translation>Schreibweisen dieses Katalogs</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>ohmkin::castings::MeaningList</name>
    <message>
        <source>under 1 %</source>
        <translation>unter 1 %</translation>
    </message>
    <message>
        <source>over 99 %</source>
        <translation>über 99 %</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>What the codes can mean</source>
        <translation>Was die Codes bedeuten können</translation>
    </message>
</context>
<context>
    <name>ohmkin::castings::TimeLineView</name>
    <message>
        <source>Time line</source>
        <translation>Zeitstrahl</translation>
    </message>
</context>
<context>
    <name>ohmkin::castings::TimeTable</name>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>First day</source>
        <translation>Erster Tag</translation>
    </message>
    <message>
        <source>Last day</source>
        <translation>Letzter Tag</translation>
    </message>
    <message>
        <source>Chance</source>
        <translation>Wahrscheinlichkeit</translation>
    </message>
    <message>
        <source>Time line as a table</source>
        <translation>Zeitstrahl als Tabelle</translation>
    </message>
</context>
<context>
    <name>ohmkin::castings::UsualLags</name>
    <message>
        <source>%1 to %2 %3</source>
        <translation>%1 bis %2 %3</translation>
    </message>
    <message>
        <source>Usual lags…</source>
        <translation>Übliche Fristen…</translation>
    </message>
    <message>
        <source>Days from casting to assembly</source>
        <translation>Tage vom Guss bis zum Zusammenbau</translation>
    </message>
    <message>
        <source>Days from assembly to vehicle</source>
        <translation>Tage vom Zusammenbau bis zum Fahrzeug</translation>
    </message>
    <message>
        <source>Vehicles that still have their first engine</source>
        <translation>Fahrzeuge, die noch ihren ersten Motor haben</translation>
    </message>
    <message>
        <source>Earliest year thought possible</source>
        <translation>Frühestes für möglich gehaltenes Jahr</translation>
    </message>
    <message>
        <source>Latest year thought possible</source>
        <translation>Spätestes für möglich gehaltenes Jahr</translation>
    </message>
    <message>
        <source>What is thought usual, and may be set where you know better (Ctrl+J)</source>
        <translation>Was für üblich gilt; wer es besser weiß, stellt es ein (Strg+J)</translation>
    </message>
    <message>
        <source>Casting to assembly, days</source>
        <translation>Guss bis Zusammenbau, Tage</translation>
    </message>
    <message>
        <source>Assembly to vehicle, days</source>
        <translation>Zusammenbau bis Fahrzeug, Tage</translation>
    </message>
    <message>
        <source>Still the first engine, %</source>
        <translation>Noch erster Motor, %</translation>
    </message>
    <message>
        <source>Not before, year</source>
        <translation>Nicht vor dem Jahr</translation>
    </message>
    <message>
        <source>Not after, year</source>
        <translation>Nicht nach dem Jahr</translation>
    </message>
    <message>
        <source>As usual</source>
        <translation>Wie üblich</translation>
    </message>
    <message>
        <source>Back to what is thought usual</source>
        <translation>Zurück zu dem, was für üblich gilt</translation>
    </message>
    <message>
        <source>Usually %1 days from casting to assembly, %2 more to the vehicle; %3 % keep the first engine.</source>
        <translation>Üblich sind %1 Tage vom Guss bis zum Zusammenbau, %2 weitere bis zum Fahrzeug; %3 % behalten den ersten Motor.</translation>
    </message>
    <message>
        <source>As you set it.</source>
        <translation>Wie von Ihnen eingestellt.</translation>
    </message>
    <message>
        <source>A judgement, from memory.</source>
        <translation>Ein Ermessen, aus dem Gedächtnis.</translation>
    </message>
    <message>
        <source>days</source>
        <translation>Tage</translation>
    </message>
    <message>
        <source>as set by you</source>
        <translation>wie von Ihnen eingestellt</translation>
    </message>
</context>
<context>
    <name>ohmkin::fault</name>
    <message>
        <source>half a minute</source>
        <translation>eine halbe Minute</translation>
    </message>
    <message>
        <source>1 minute</source>
        <translation>1 Minute</translation>
    </message>
    <message>
        <source>%1 minutes</source>
        <translation>%1 Minuten</translation>
    </message>
    <message>
        <source>At the engine</source>
        <translation>Am Motor</translation>
    </message>
    <message>
        <source>Behind the dash</source>
        <translation>Hinter dem Armaturenbrett</translation>
    </message>
    <message>
        <source>On the bench</source>
        <translation>Am Messplatz</translation>
    </message>
    <message>
        <source>At the fuse box</source>
        <translation>Am Sicherungskasten</translation>
    </message>
    <message>
        <source>In the driver&apos;s seat</source>
        <translation>Auf dem Fahrersitz</translation>
    </message>
    <message>
        <source>battery</source>
        <translation>Batterie</translation>
    </message>
    <message>
        <source>key switch</source>
        <translation>Zündung</translation>
    </message>
    <message>
        <source>fuse</source>
        <translation>Sicherung</translation>
    </message>
    <message>
        <source>feed wire</source>
        <translation>Zuleitung</translation>
    </message>
    <message>
        <source>board, feed pin</source>
        <translation>Leiterplatte, Speisestift</translation>
    </message>
    <message>
        <source>regulator</source>
        <translation>Spannungskonstanter</translation>
    </message>
    <message>
        <source>gauge, heater</source>
        <translation>Anzeige, Heizdraht</translation>
    </message>
    <message>
        <source>gauge, feed coil</source>
        <translation>Anzeige, Spule zur Speisung</translation>
    </message>
    <message>
        <source>shunt, feed to sender</source>
        <translation>Nebenwiderstand, Speisung–Geber</translation>
    </message>
    <message>
        <source>board, lead pin</source>
        <translation>Leiterplatte, Leitungsstift</translation>
    </message>
    <message>
        <source>lead</source>
        <translation>Leitung</translation>
    </message>
    <message>
        <source>connector</source>
        <translation>Stecker</translation>
    </message>
    <message>
        <source>sender</source>
        <translation>Geber</translation>
    </message>
    <message>
        <source>thread</source>
        <translation>Gewinde</translation>
    </message>
    <message>
        <source>engine, coolant</source>
        <translation>Motor, Kühlmittel</translation>
    </message>
    <message>
        <source>engine strap</source>
        <translation>Masseband, Motor</translation>
    </message>
    <message>
        <source>gauge, ground coil</source>
        <translation>Anzeige, Spule zur Masse</translation>
    </message>
    <message>
        <source>shunt, sender to ground</source>
        <translation>Nebenwiderstand, Geber–Masse</translation>
    </message>
    <message>
        <source>housing ground</source>
        <translation>Masse des Gehäuses</translation>
    </message>
    <message>
        <source>board, ground pin</source>
        <translation>Leiterplatte, Massestift</translation>
    </message>
    <message>
        <source>cluster ground</source>
        <translation>Masse des Instruments</translation>
    </message>
    <message>
        <source>body ground</source>
        <translation>Masse, Karosserie</translation>
    </message>
    <message>
        <source>damp on the board</source>
        <translation>Feuchte auf der Leiterplatte</translation>
    </message>
    <message>
        <source>lead to chassis</source>
        <translation>Leitung gegen Fahrgestell</translation>
    </message>
    <message>
        <source>tells most for its time</source>
        <translation>sagt am meisten für seine Zeit</translation>
    </message>
    <message>
        <source>tells much for its time</source>
        <translation>sagt viel für seine Zeit</translation>
    </message>
    <message>
        <source>tells something</source>
        <translation>sagt etwas</translation>
    </message>
    <message>
        <source>tells little for its time</source>
        <translation>sagt wenig für seine Zeit</translation>
    </message>
    <message>
        <source>To begin with</source>
        <translation>Für den Anfang</translation>
    </message>
    <message>
        <source>Key on, engine warm: what does the needle do?</source>
        <translation>Zündung an, Motor warm: was tut der Zeiger?</translation>
    </message>
    <message>
        <source>Something else, or not sure</source>
        <translation>Etwas anderes, oder nicht sicher</translation>
    </message>
    <message>
        <source>Change an answer</source>
        <translation>Eine Antwort ändern</translation>
    </message>
    <message>
        <source>Next test</source>
        <translation>Nächste Prüfung</translation>
    </message>
    <message>
        <source>The test you chose</source>
        <translation>Die von Ihnen gewählte Prüfung</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>With</source>
        <translation>Mit</translation>
    </message>
    <message>
        <source>no tools</source>
        <translation>kein Werkzeug</translation>
    </message>
    <message>
        <source>Takes</source>
        <translation>Dauert</translation>
    </message>
    <message>
        <source>First</source>
        <translation>Zuerst</translation>
    </message>
    <message>
        <source>%1: %2 more</source>
        <translation>%1: %2 weitere</translation>
    </message>
    <message>
        <source>While it is open: %1</source>
        <translation>Solange es offen ist: %1</translation>
    </message>
    <message>
        <source>Not sure, or cannot be done</source>
        <translation>Nicht sicher, oder nicht möglich</translation>
    </message>
    <message>
        <source>What to do</source>
        <translation>Was zu tun ist</translation>
    </message>
    <message>
        <source>What to do, though it is not sure</source>
        <translation>Was zu tun ist, obwohl es nicht sicher ist</translation>
    </message>
    <message>
        <source>Puts it right</source>
        <translation>Behebt es</translation>
    </message>
    <message>
        <source>Work, with the part&apos;s price</source>
        <translation>Arbeit, mit dem Preis des Teils</translation>
    </message>
    <message>
        <source>No test here tells it from this: %1.</source>
        <translation>Keine Prüfung hier unterscheidet es von diesem: %1.</translation>
    </message>
    <message>
        <source>When it is done: did the repair help?</source>
        <translation>Wenn es getan ist: hat die Reparatur geholfen?</translation>
    </message>
    <message>
        <source>Yes, it reads right</source>
        <translation>Ja, sie zeigt richtig</translation>
    </message>
    <message>
        <source>No, it still misreads</source>
        <translation>Nein, sie zeigt noch falsch</translation>
    </message>
    <message>
        <source>It reads right again</source>
        <translation>Sie zeigt wieder richtig</translation>
    </message>
    <message>
        <source>What was it in the end?</source>
        <translation>Was war es am Ende?</translation>
    </message>
    <message>
        <source>It is kept with the search, so that the next one can learn from it.</source>
        <translation>Es wird mit der Suche behalten, damit die nächste daraus lernen kann.</translation>
    </message>
    <message>
        <source>Not sure</source>
        <translation>Nicht sicher</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Erledigt</translation>
    </message>
    <message>
        <source>It reads right again.</source>
        <translation>Sie zeigt wieder richtig.</translation>
    </message>
    <message>
        <source>It was</source>
        <translation>Es war</translation>
    </message>
    <message>
        <source>What helped</source>
        <translation>Was geholfen hat</translation>
    </message>
    <message>
        <source>Watch the gauge on the next drive: the needle is an aid, a thermometer is the proof.</source>
        <translation>Beobachten Sie die Anzeige bei der nächsten Fahrt: der Zeiger ist eine Hilfe, der Beweis ist ein Thermometer.</translation>
    </message>
    <message>
        <source>Two things at once</source>
        <translation>Zwei Dinge zugleich</translation>
    </message>
    <message>
        <source>What the needle does</source>
        <translation>Was der Zeiger tut</translation>
    </message>
    <message>
        <source>something else, or not sure</source>
        <translation>etwas anderes, oder nicht sicher</translation>
    </message>
    <message>
        <source>did not help</source>
        <translation>hat nicht geholfen</translation>
    </message>
    <message>
        <source>not sure</source>
        <translation>nicht sicher</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Taken for granted</source>
        <translation>Vorausgesetzt</translation>
    </message>
    <message>
        <source>Gauge: %1</source>
        <translation>Anzeige: %1</translation>
    </message>
    <message>
        <source>Sender: %1</source>
        <translation>Geber: %1</translation>
    </message>
    <message>
        <source> (does not fit the rest)</source>
        <translation> (passt nicht zum Übrigen)</translation>
    </message>
    <message>
        <source>What may be the matter</source>
        <translation>Woran es liegen kann</translation>
    </message>
    <message>
        <source>  Caution: %1</source>
        <translation>  Vorsicht: %1</translation>
    </message>
    <message>
        <source>resistance family %1</source>
        <translation>Widerstandsfamilie %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::fault::AnswerList</name>
    <message>
        <source>Answered so far</source>
        <translation>Bisher beantwortet</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Ändern</translation>
    </message>
    <message>
        <source>Take back</source>
        <translation>Zurücknehmen</translation>
    </message>
    <message>
        <source>%1 (does not fit the rest)</source>
        <translation>%1 (passt nicht zum Übrigen)</translation>
    </message>
    <message>
        <source>Change the answer to: %1</source>
        <translation>Die Antwort ändern auf: %1</translation>
    </message>
    <message>
        <source>Take back the answer to: %1</source>
        <translation>Die Antwort zurücknehmen auf: %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::fault::FaultPage</name>
    <message>
        <source>&amp;New search</source>
        <translation>&amp;Neue Suche</translation>
    </message>
    <message>
        <source>Un&amp;do</source>
        <translation>&amp;Rückgängig</translation>
    </message>
    <message>
        <source>Nothing yet. Press the number of what you see.</source>
        <translation>Noch nichts. Drücken Sie die Nummer dessen, was Sie sehen.</translation>
    </message>
    <message>
        <source>Take back the last answer (Ctrl+Z)</source>
        <translation>Die letzte Antwort zurücknehmen (Strg+Z)</translation>
    </message>
    <message>
        <source>Another vehicle, or the same from the beginning (Alt+N)</source>
        <translation>Ein anderes Fahrzeug, oder dasselbe von vorn (Alt+N)</translation>
    </message>
    <message>
        <source>What may be the matter</source>
        <translation>Woran es liegen kann</translation>
    </message>
    <message>
        <source>Answered so far</source>
        <translation>Bisher beantwortet</translation>
    </message>
    <message>
        <source>Other tests, the best first (Ctrl+T)</source>
        <translation>Andere Prüfungen, die beste zuerst (Strg+T)</translation>
    </message>
    <message>
        <source>What the answer rests on</source>
        <translation>Worauf die Antwort beruht</translation>
    </message>
    <message>
        <source>Not sure</source>
        <translation>Nicht sicher</translation>
    </message>
    <message>
        <source>Answer %1</source>
        <translation>Antwort %1</translation>
    </message>
    <message>
        <source>Answers</source>
        <translation>Antworten</translation>
    </message>
    <message>
        <source>Go to the gauge</source>
        <translation>Zur Anzeige gehen</translation>
    </message>
    <message>
        <source>Go to the other tests</source>
        <translation>Zu den anderen Prüfungen gehen</translation>
    </message>
    <message>
        <source>Back to the test that is proposed</source>
        <translation>Zurück zur vorgeschlagenen Prüfung</translation>
    </message>
    <message>
        <source>Begin another search</source>
        <translation>Eine andere Suche beginnen</translation>
    </message>
    <message>
        <source>That circuit cannot be made</source>
        <translation>Dieser Stromkreis lässt sich nicht bilden</translation>
    </message>
    <message>
        <source>No gauges in this catalogue</source>
        <translation>Keine Anzeigen in diesem Katalog</translation>
    </message>
    <message>
        <source>A fault is searched in the circuit of a known gauge. Bring one in, or open another catalogue.</source>
        <translation>Eine Störung wird im Stromkreis einer bekannten Anzeige gesucht. Nehmen Sie eine auf, oder öffnen Sie einen anderen Katalog.</translation>
    </message>
    <message>
        <source>Which gauge misreads?</source>
        <translation>Welche Anzeige zeigt falsch?</translation>
    </message>
    <message>
        <source>Name the gauge, and the sender where you know it. One test after the other is then proposed: the one that tells most for its minutes.</source>
        <translation>Nennen Sie die Anzeige, und den Geber, wo Sie ihn kennen. Dann wird eine Prüfung nach der anderen vorgeschlagen: jeweils die, die für ihre Minuten am meisten sagt.</translation>
    </message>
    <message>
        <source>Try %1</source>
        <translation>Versuchen: %1</translation>
    </message>
    <message numerus="yes">
        <source>What this circuit does not have was left out (%n).</source>
        <translation>
            <numerusform>Was dieser Stromkreis nicht hat, blieb weg (%n).</numerusform>
            <numerusform>Was dieser Stromkreis nicht hat, blieb weg (%n).</numerusform>
        </translation>
    </message>
    <message>
        <source>Made already: it costs no minutes any more</source>
        <translation>Schon gemacht: kostet keine Minuten mehr</translation>
    </message>
    <message>
        <source>set-up</source>
        <translation>Aufbau</translation>
    </message>
    <message>
        <source>new search</source>
        <translation>neue Suche</translation>
    </message>
    <message>
        <source>a search that was kept</source>
        <translation>eine behaltene Suche</translation>
    </message>
    <message>
        <source>answer</source>
        <translation>Antwort</translation>
    </message>
    <message>
        <source>repair that helped</source>
        <translation>Reparatur, die half</translation>
    </message>
    <message>
        <source>repair that did not help</source>
        <translation>Reparatur, die nicht half</translation>
    </message>
    <message>
        <source>cause</source>
        <translation>Ursache</translation>
    </message>
    <message>
        <source>answer taken back</source>
        <translation>Antwort zurückgenommen</translation>
    </message>
    <message>
        <source>Not in this catalogue</source>
        <translation>Nicht in diesem Katalog</translation>
    </message>
    <message>
        <source>&amp;Print</source>
        <translation>&amp;Drucken</translation>
    </message>
    <message>
        <source>A wiring drawing, or what every test shows (Ctrl+P)</source>
        <translation>Ein Schaltplan, oder was jede Prüfung zeigt (Strg+P)</translation>
    </message>
    <message>
        <source>Wiring drawing</source>
        <translation>Schaltplan</translation>
    </message>
    <message>
        <source>What every test shows</source>
        <translation>Was jede Prüfung zeigt</translation>
    </message>
    <message>
        <source>Print the wiring drawing or the tests</source>
        <translation>Schaltplan oder Prüfungen drucken</translation>
    </message>
    <message>
        <source>Fault</source>
        <translation>Störung</translation>
    </message>
    <message>
        <source>no gauge yet</source>
        <translation>noch keine Anzeige</translation>
    </message>
    <message>
        <source>a gauge whose circuit is known</source>
        <translation>eine Anzeige, deren Stromkreis bekannt ist</translation>
    </message>
    <message>
        <source>wiring of %1</source>
        <translation>Schaltplan von %1</translation>
    </message>
    <message>
        <source>tests of %1</source>
        <translation>Prüfungen an %1</translation>
    </message>
    <message>
        <source>Keep the search with a job</source>
        <translation>Die Suche bei einem Auftrag behalten</translation>
    </message>
    <message>
        <source>fault search, %1</source>
        <translation>Störungssuche, %1</translation>
    </message>
    <message>
        <source>the search that was kept</source>
        <translation>die behaltene Suche</translation>
    </message>
</context>
<context>
    <name>ohmkin::fault::LikelihoodBars</name>
    <message>
        <source>very unlikely</source>
        <translation>sehr unwahrscheinlich</translation>
    </message>
    <message>
        <source>What may be the matter</source>
        <translation>Woran es liegen kann</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>ohmkin::fault::OpenedChain</name>
    <message>
        <source>Battery and body</source>
        <translation>Batterie und Karosserie</translation>
    </message>
    <message>
        <source>Dash</source>
        <translation>Armaturenbrett</translation>
    </message>
    <message>
        <source>Lead</source>
        <translation>Leitung</translation>
    </message>
    <message>
        <source>Engine</source>
        <translation>Motor</translation>
    </message>
    <message>
        <source>test</source>
        <translation>Prüfung</translation>
    </message>
    <message>
        <source>The circuit, from the battery to the engine</source>
        <translation>Der Stromkreis, von der Batterie zum Motor</translation>
    </message>
    <message>
        <source>This test looks at: %1.</source>
        <translation>Diese Prüfung betrifft: %1.</translation>
    </message>
    <message>
        <source>Suspected: %1.</source>
        <translation>Verdächtig: %1.</translation>
    </message>
    <message>
        <source>looked at by this test</source>
        <translation>von dieser Prüfung betroffen</translation>
    </message>
</context>
<context>
    <name>ohmkin::fault::OutcomeButton</name>
    <message>
        <source>Key %1. Your answer so far.</source>
        <translation>Taste %1. Ihre bisherige Antwort.</translation>
    </message>
    <message>
        <source>Key %1</source>
        <translation>Taste %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::fault::QuestionForm</name>
    <message>
        <source>Gauge</source>
        <translation>Anzeige</translation>
    </message>
    <message>
        <source>Sender</source>
        <translation>Geber</translation>
    </message>
    <message>
        <source>Engine warm at</source>
        <translation>Motor warm bei</translation>
    </message>
    <message>
        <source>Battery, engine off, volts</source>
        <translation>Batterie, Motor aus, Volt</translation>
    </message>
    <message>
        <source>Resistor on the gauge, feed to sender</source>
        <translation>Widerstand an der Anzeige, Speisung–Geber</translation>
    </message>
    <message>
        <source>Resistor on the gauge, sender to ground</source>
        <translation>Widerstand an der Anzeige, Geber–Masse</translation>
    </message>
    <message>
        <source>&amp;More…</source>
        <translation>&amp;Mehr…</translation>
    </message>
    <message>
        <source>its name or number, or the family it was built for</source>
        <translation>ihr Name oder ihre Nummer, oder die Familie, für die sie gebaut ist</translation>
    </message>
    <message>
        <source>its number or family; empty: the gauge&apos;s own family</source>
        <translation>seine Nummer oder Familie; leer: die Familie der Anzeige</translation>
    </message>
    <message>
        <source>12.6</source>
        <translation>12,6</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>88 °C</source>
        <translation>88 °C</translation>
    </message>
    <message>
        <source>What is known of the circuit besides (Alt+M)</source>
        <translation>Was vom Stromkreis sonst bekannt ist (Alt+M)</translation>
    </message>
    <message>
        <source>Sender on the engine</source>
        <translation>Geber am Motor</translation>
    </message>
    <message>
        <source>Battery, engine off, V</source>
        <translation>Batterie, Motor aus, V</translation>
    </message>
    <message>
        <source>Resistor feed to sender, Ω</source>
        <translation>Widerstand Speisung–Geber, Ω</translation>
    </message>
    <message>
        <source>Resistor sender to ground, Ω</source>
        <translation>Widerstand Geber–Masse, Ω</translation>
    </message>
    <message>
        <source>Battery</source>
        <translation>Batterie</translation>
    </message>
</context>
<context>
    <name>ohmkin::fault::TestList</name>
    <message>
        <source>Other tests</source>
        <translation>Andere Prüfungen</translation>
    </message>
</context>
<context>
    <name>ohmkin::jobs</name>
    <message>
        <source>Answer</source>
        <translation>Antwort</translation>
    </message>
    <message>
        <source>Pair</source>
        <translation>Paar</translation>
    </message>
    <message>
        <source>Trim</source>
        <translation>Abgleich</translation>
    </message>
    <message>
        <source>Swap plan</source>
        <translation>Umbauplan</translation>
    </message>
    <message>
        <source>Engine date</source>
        <translation>Motordatum</translation>
    </message>
    <message>
        <source>Search for a fault</source>
        <translation>Störungssuche</translation>
    </message>
    <message>
        <source>Bench curve</source>
        <translation>Kennlinie vom Messplatz</translation>
    </message>
    <message>
        <source>File</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>Document</source>
        <translation>Dokument</translation>
    </message>
    <message>
        <source>At the hot mark: on time.</source>
        <translation>An der Heiß-Marke: rechtzeitig.</translation>
    </message>
    <message>
        <source>At the hot mark: %1 late.</source>
        <translation>An der Heiß-Marke: %1 zu spät.</translation>
    </message>
    <message>
        <source>At the hot mark: %1 early.</source>
        <translation>An der Heiß-Marke: %1 zu früh.</translation>
    </message>
    <message>
        <source>The hot mark is never reached: at least %1 late.</source>
        <translation>Die Heiß-Marke wird nie erreicht: mindestens %1 zu spät.</translation>
    </message>
    <message>
        <source>The hot mark is passed too soon: at least %1 early.</source>
        <translation>Die Heiß-Marke wird vorzeitig überschritten: mindestens %1 zu früh.</translation>
    </message>
    <message>
        <source>No sender recommended</source>
        <translation>Kein Geber empfohlen</translation>
    </message>
    <message>
        <source>With it: %1.</source>
        <translation>Dazu: %1.</translation>
    </message>
    <message>
        <source>Trim: %1.</source>
        <translation>Abgleich: %1.</translation>
    </message>
    <message>
        <source>Holds for: %1.</source>
        <translation>Gilt für: %1.</translation>
    </message>
    <message>
        <source>Asked: %1.</source>
        <translation>Gefragt: %1.</translation>
    </message>
    <message>
        <source>%1 with %2: %3 %4</source>
        <translation>%1 mit %2: %3 %4</translation>
    </message>
    <message>
        <source>To buy: %1.</source>
        <translation>Zu kaufen: %1.</translation>
    </message>
    <message>
        <source>It %1.</source>
        <translation>Die Anzeige: %1.</translation>
    </message>
    <message>
        <source>%1: %2.</source>
        <translation>%1: %2.</translation>
    </message>
    <message>
        <source>not sure</source>
        <translation>nicht sicher</translation>
    </message>
    <message>
        <source>Did not help: %1.</source>
        <translation>Hat nicht geholfen: %1.</translation>
    </message>
    <message>
        <source>What helped: %1.</source>
        <translation>Was geholfen hat: %1.</translation>
    </message>
    <message>
        <source>Found: %1.</source>
        <translation>Gefunden: %1.</translation>
    </message>
    <message>
        <source>It is there, as it was.</source>
        <translation>Sie ist da, wie sie war.</translation>
    </message>
    <message>
        <source>%1, by %2</source>
        <translation>%1, von %2</translation>
    </message>
    <message>
        <source>This is no longer as it was written: its bytes differ. It is not shown.</source>
        <translation>Dies ist nicht mehr, wie es geschrieben wurde: die Bytes weichen ab. Es wird nicht gezeigt.</translation>
    </message>
</context>
<context>
    <name>ohmkin::jobs::CloseForm</name>
    <message>
        <source>Close the job</source>
        <translation>Auftrag abschließen</translation>
    </message>
    <message>
        <source>Part fitted</source>
        <translation>Eingebautes Teil</translation>
    </message>
    <message>
        <source>Cause found</source>
        <translation>Gefundene Ursache</translation>
    </message>
    <message>
        <source>What the gauge did</source>
        <translation>Was die Anzeige tat</translation>
    </message>
    <message>
        <source>Leave empty what is not known. Causes are counted, and help the next search for a fault.</source>
        <translation>Lassen Sie leer, was nicht bekannt ist. Ursachen werden gezählt und helfen der nächsten Störungssuche.</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keins</translation>
    </message>
    <message>
        <source>none found</source>
        <translation>keine gefunden</translation>
    </message>
    <message>
        <source>not said</source>
        <translation>nicht gesagt</translation>
    </message>
    <message>
        <source>cause</source>
        <translation>Ursache</translation>
    </message>
    <message>
        <source>one of the causes offered as you type; what else there is to say goes into a note</source>
        <translation>eine der Ursachen, die beim Eingeben angeboten werden; was sonst zu sagen ist, gehört in eine Bemerkung</translation>
    </message>
    <message>
        <source>Close &amp;it</source>
        <translation>Abs&amp;chließen</translation>
    </message>
</context>
<context>
    <name>ohmkin::jobs::DocumentCard</name>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Remove: %1, %2</source>
        <translation>Entfernen: %1, %2</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 vom %2</translation>
    </message>
    <message>
        <source>Go on with it</source>
        <translation>Damit weitermachen</translation>
    </message>
</context>
<context>
    <name>ohmkin::jobs::EraseForm</name>
    <message>
        <source>Erase for good</source>
        <translation>Endgültig löschen</translation>
    </message>
    <message>
        <source>&amp;Erase for good</source>
        <translation>Endgültig &amp;löschen</translation>
    </message>
    <message>
        <source>Number of the job</source>
        <translation>Nummer des Auftrags</translation>
    </message>
    <message>
        <source>Type the number of the job</source>
        <translation>Nummer des Auftrags eingeben</translation>
    </message>
    <message>
        <source>Erase job %1 for good</source>
        <translation>Auftrag %1 endgültig löschen</translation>
    </message>
    <message>
        <source>The job, its notes and what was kept with it are overwritten in the file, and no undo brings them back. Pieces sold stay counted. Backups made before still hold it.</source>
        <translation>Der Auftrag, seine Bemerkungen und was bei ihm behalten ist, werden in der Datei überschrieben, und kein Rückgängig bringt sie wieder. Verkaufte Stücke bleiben gezählt. Frühere Sicherungen enthalten ihn noch.</translation>
    </message>
</context>
<context>
    <name>ohmkin::jobs::FieldsForm</name>
    <message>
        <source>New job</source>
        <translation>Neuer Auftrag</translation>
    </message>
    <message>
        <source>&amp;Save</source>
        <translation>&amp;Speichern</translation>
    </message>
    <message>
        <source>Reference</source>
        <translation>Referenz</translation>
    </message>
    <message>
        <source>Vehicle</source>
        <translation>Fahrzeug</translation>
    </message>
    <message>
        <source>Engine</source>
        <translation>Motor</translation>
    </message>
    <message>
        <source>What was seen</source>
        <translation>Was beobachtet wurde</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Bemerkung</translation>
    </message>
    <message>
        <source>Reference: %1.</source>
        <translation>Referenz: %1.</translation>
    </message>
    <message>
        <source>Job %1</source>
        <translation>Auftrag %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::jobs::Form</name>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
</context>
<context>
    <name>ohmkin::jobs::JobDesk</name>
    <message>
        <source>&amp;Print…</source>
        <translation>&amp;Drucken…</translation>
    </message>
    <message>
        <source>More…</source>
        <translation>Mehr…</translation>
    </message>
    <message>
        <source>Vehicle</source>
        <translation>Fahrzeug</translation>
    </message>
    <message>
        <source>Engine</source>
        <translation>Motor</translation>
    </message>
    <message>
        <source>Seen</source>
        <translation>Beobachtet</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Bemerkung</translation>
    </message>
    <message>
        <source>Part fitted</source>
        <translation>Eingebautes Teil</translation>
    </message>
    <message>
        <source>Cause found</source>
        <translation>Gefundene Ursache</translation>
    </message>
    <message>
        <source>Shelf</source>
        <translation>Lager</translation>
    </message>
    <message>
        <source>job %1</source>
        <translation>Auftrag %1</translation>
    </message>
    <message>
        <source>begun on %1</source>
        <translation>begonnen am %1</translation>
    </message>
    <message>
        <source>begun on %1 by %2</source>
        <translation>begonnen am %1 von %2</translation>
    </message>
    <message>
        <source>&amp;Close the job…</source>
        <translation>Auftrag &amp;abschließen…</translation>
    </message>
    <message>
        <source>&amp;Open it again</source>
        <translation>&amp;Wieder öffnen</translation>
    </message>
    <message>
        <source>Today it would differ. %1</source>
        <translation>Heute wäre sie anders. %1</translation>
    </message>
    <message>
        <source>It cannot be asked again. %1</source>
        <translation>Sie lässt sich nicht erneut fragen. %1</translation>
    </message>
    <message>
        <source>Add a no&amp;te</source>
        <translation>&amp;Bemerkung anfügen</translation>
    </message>
</context>
<context>
    <name>ohmkin::jobs::JobList</name>
    <message>
        <source>job %1</source>
        <translation>Auftrag %1</translation>
    </message>
    <message>
        <source>open</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>done</source>
        <translation>erledigt</translation>
    </message>
    <message>
        <source>Jobs, open ones first</source>
        <translation>Aufträge, offene zuerst</translation>
    </message>
</context>
<context>
    <name>ohmkin::jobs::JobsPage</name>
    <message>
        <source>Find a job</source>
        <translation>Auftrag suchen</translation>
    </message>
    <message>
        <source>&amp;New job</source>
        <translation>&amp;Neuer Auftrag</translation>
    </message>
    <message>
        <source>reference, vehicle, part, note</source>
        <translation>Referenz, Fahrzeug, Teil, Bemerkung</translation>
    </message>
    <message>
        <source>remove what was kept</source>
        <translation>Behaltenes entfernen</translation>
    </message>
    <message>
        <source>Begin a new job</source>
        <translation>Neuen Auftrag beginnen</translation>
    </message>
    <message>
        <source>Add a note to the job</source>
        <translation>Dem Auftrag eine Bemerkung anfügen</translation>
    </message>
    <message>
        <source>Close the job, or open it again</source>
        <translation>Auftrag abschließen oder wieder öffnen</translation>
    </message>
    <message>
        <source>Print of the job</source>
        <translation>Vom Auftrag drucken</translation>
    </message>
    <message>
        <source>Edit the job</source>
        <translation>Auftrag bearbeiten</translation>
    </message>
    <message>
        <source>Attach a file to the job…</source>
        <translation>Dem Auftrag eine Datei beifügen…</translation>
    </message>
    <message>
        <source>Attach a photo or another file</source>
        <translation>Foto oder andere Datei beifügen</translation>
    </message>
    <message>
        <source>Duplicate the job</source>
        <translation>Auftrag verdoppeln</translation>
    </message>
    <message>
        <source>duplicate the job</source>
        <translation>Auftrag verdoppeln</translation>
    </message>
    <message>
        <source>Delete the job</source>
        <translation>Auftrag löschen</translation>
    </message>
    <message>
        <source>delete the job</source>
        <translation>Auftrag löschen</translation>
    </message>
    <message>
        <source>Erase the job for good…</source>
        <translation>Auftrag endgültig löschen…</translation>
    </message>
    <message>
        <source>Job sheet</source>
        <translation>Auftragsblatt</translation>
    </message>
    <message>
        <source>Offset card</source>
        <translation>Korrekturkarte</translation>
    </message>
    <message>
        <source>Shelf label</source>
        <translation>Lageretikett</translation>
    </message>
    <message>
        <source>Save what the form says</source>
        <translation>Speichern, was im Formular steht</translation>
    </message>
    <message>
        <source>Out of the form</source>
        <translation>Aus dem Formular</translation>
    </message>
    <message numerus="yes">
        <source>%n jobs</source>
        <translation>
            <numerusform>%n Auftrag</numerusform>
            <numerusform>%n Aufträge</numerusform>
        </translation>
    </message>
    <message>
        <source>, %1 open</source>
        <translation>, %1 offen</translation>
    </message>
    <message numerus="yes">
        <source>%n jobs found</source>
        <translation>
            <numerusform>%n Auftrag gefunden</numerusform>
            <numerusform>%n Aufträge gefunden</numerusform>
        </translation>
    </message>
    <message>
        <source>; type to find others</source>
        <translation>; weitere durch Eingeben</translation>
    </message>
    <message>
        <source>No jobs yet</source>
        <translation>Noch keine Aufträge</translation>
    </message>
    <message>
        <source>Begin one here with Ctrl+N, or keep an answer with one: Ctrl+K on the page it is on.</source>
        <translation>Beginnen Sie hier einen mit Strg+N, oder behalten Sie eine Antwort bei einem: Strg+K auf der Seite, auf der sie steht.</translation>
    </message>
    <message>
        <source>No job says that</source>
        <translation>Kein Auftrag sagt das</translation>
    </message>
    <message>
        <source>Every word is looked for in references, vehicles, engines, parts and notes.</source>
        <translation>Jedes Wort wird in Referenzen, Fahrzeugen, Motoren, Teilen und Bemerkungen gesucht.</translation>
    </message>
    <message>
        <source>no part</source>
        <translation>kein Teil</translation>
    </message>
    <message>
        <source>a part fitted or recommended</source>
        <translation>ein eingebautes oder empfohlenes Teil</translation>
    </message>
    <message>
        <source>Done again: %1.</source>
        <translation>Wiederholt: %1.</translation>
    </message>
    <message>
        <source>Undone: %1.</source>
        <translation>Rückgängig gemacht: %1.</translation>
    </message>
    <message>
        <source>Job %1</source>
        <translation>Auftrag %1</translation>
    </message>
    <message>
        <source>one that was changed since</source>
        <translation>einer, der seither geändert wurde</translation>
    </message>
    <message>
        <source>the job as it was left here</source>
        <translation>der Auftrag, wie er hier verlassen wurde</translation>
    </message>
    <message>
        <source>new job</source>
        <translation>neuer Auftrag</translation>
    </message>
    <message>
        <source>edit the job</source>
        <translation>Auftrag bearbeiten</translation>
    </message>
    <message>
        <source>add a note</source>
        <translation>Bemerkung anfügen</translation>
    </message>
    <message>
        <source>close the job</source>
        <translation>Auftrag abschließen</translation>
    </message>
    <message>
        <source>Job %1 is erased.</source>
        <translation>Auftrag %1 ist endgültig gelöscht.</translation>
    </message>
    <message>
        <source>open the job again</source>
        <translation>Auftrag wieder öffnen</translation>
    </message>
    <message>
        <source>attach a file</source>
        <translation>Datei beifügen</translation>
    </message>
    <message>
        <source>a sheet that is still being made</source>
        <translation>ein Blatt, das noch entsteht</translation>
    </message>
    <message>
        <source>a moment&apos;s patience</source>
        <translation>einen Augenblick Geduld</translation>
    </message>
    <message>
        <source>job %1</source>
        <translation>Auftrag %1</translation>
    </message>
    <message>
        <source>job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>label %1</source>
        <translation>Etikett %1</translation>
    </message>
    <message>
        <source>label</source>
        <translation>Etikett</translation>
    </message>
    <message>
        <source>no answer that can be asked again</source>
        <translation>keine Antwort, die sich erneut fragen lässt</translation>
    </message>
    <message>
        <source>an answer kept with the job</source>
        <translation>eine beim Auftrag behaltene Antwort</translation>
    </message>
    <message>
        <source>an answer that would differ today</source>
        <translation>eine Antwort, die heute anders wäre</translation>
    </message>
    <message>
        <source>an answer as it is today: keep it with the job first</source>
        <translation>eine Antwort, wie sie heute ist: behalten Sie sie zuerst beim Auftrag</translation>
    </message>
    <message>
        <source>offset card %1, job %2</source>
        <translation>Korrekturkarte %1, Auftrag %2</translation>
    </message>
    <message>
        <source>no sender recommended</source>
        <translation>kein Geber empfohlen</translation>
    </message>
    <message>
        <source>an answer that recommends one</source>
        <translation>eine Antwort, die einen empfiehlt</translation>
    </message>
    <message>
        <source>a new job, “%1”</source>
        <translation>ein neuer Auftrag, „%1“</translation>
    </message>
    <message>
        <source>what is being written of the job “%1”</source>
        <translation>was zum Auftrag „%1“ geschrieben wird</translation>
    </message>
    <message>
        <source>This is not saved yet. Once more to give it up.</source>
        <translation>Das ist noch nicht gespeichert. Noch einmal, um es aufzugeben.</translation>
    </message>
</context>
<context>
    <name>ohmkin::jobs::NoteForm</name>
    <message>
        <source>Note</source>
        <translation>Bemerkung</translation>
    </message>
    <message>
        <source>&amp;Add</source>
        <translation>An&amp;fügen</translation>
    </message>
    <message>
        <source>A line more under the note</source>
        <translation>Eine weitere Zeile unter der Bemerkung</translation>
    </message>
</context>
<context>
    <name>ohmkin::match</name>
    <message>
        <source>not understood: %1</source>
        <translation>nicht verstanden: %1</translation>
    </message>
    <message>
        <source>Gauge and sender</source>
        <translation>Anzeige und Geber</translation>
    </message>
    <message>
        <source>Terminal</source>
        <translation>Anschluss</translation>
    </message>
    <message>
        <source>Thread and port</source>
        <translation>Gewinde und Bohrung</translation>
    </message>
    <message>
        <source>Engine and era</source>
        <translation>Motor und Bauzeit</translation>
    </message>
    <message>
        <source>This sender</source>
        <translation>Dieser Geber</translation>
    </message>
    <message>
        <source>This vehicle and engine</source>
        <translation>Dieses Fahrzeug und dieser Motor</translation>
    </message>
    <message>
        <source>The question</source>
        <translation>Die Frage</translation>
    </message>
    <message>
        <source>in the head now</source>
        <translation>jetzt im Kopf</translation>
    </message>
    <message>
        <source>likely in the head now</source>
        <translation>wahrscheinlich jetzt im Kopf</translation>
    </message>
    <message>
        <source>none on the shelf</source>
        <translation>keiner am Lager</translation>
    </message>
    <message>
        <source>bin %1 · %2</source>
        <translation>Fach %1 · %2</translation>
    </message>
    <message>
        <source>, %1 more</source>
        <translation>, %1 weitere</translation>
    </message>
    <message>
        <source>worst %1</source>
        <translation>schlimmstens %1</translation>
    </message>
    <message>
        <source>as asked</source>
        <translation>wie gefragt</translation>
    </message>
    <message>
        <source>%1
%2 %</source>
        <translation>%1
%2 %</translation>
    </message>
    <message>
        <source>opens</source>
        <translation>unterbrochen</translation>
    </message>
    <message>
        <source>shorts</source>
        <translation>kurzgeschlossen</translation>
    </message>
    <message>
        <source>drifts up</source>
        <translation>driftet nach oben</translation>
    </message>
    <message>
        <source>drifts down</source>
        <translation>driftet nach unten</translation>
    </message>
    <message>
        <source>grounded</source>
        <translation>an Masse</translation>
    </message>
    <message>
        <source>below the marks</source>
        <translation>unter der Skala</translation>
    </message>
    <message>
        <source>past the marks</source>
        <translation>über der Skala</translation>
    </message>
    <message>
        <source>seen</source>
        <translation>sichtbar</translation>
    </message>
    <message>
        <source>silent</source>
        <translation>unbemerkt</translation>
    </message>
    <message>
        <source>May stay: </source>
        <translation>Darf bleiben: </translation>
    </message>
    <message>
        <source>To get home only: </source>
        <translation>Nur bis nach Hause: </translation>
    </message>
    <message>
        <source>Not within limits: </source>
        <translation>Nicht in den Grenzen: </translation>
    </message>
    <message>
        <source>%1. At worst %2. </source>
        <translation>%1. Schlimmstens %2. </translation>
    </message>
    <message>
        <source>%1: buy %2 W</source>
        <translation>%1: mit %2 W kaufen</translation>
    </message>
    <message>
        <source>. Mounted behind the dash, never on the head.</source>
        <translation>. Hinter dem Armaturenbrett anbringen, nie am Kopf.</translation>
    </message>
    <message>
        <source>, lot %1</source>
        <translation>, Los %1</translation>
    </message>
    <message>
        <source>The hot mark comes on time.</source>
        <translation>Die Heiß-Marke kommt rechtzeitig.</translation>
    </message>
    <message>
        <source>The hot mark comes %1 late.</source>
        <translation>Die Heiß-Marke kommt %1 zu spät.</translation>
    </message>
    <message>
        <source>The hot mark comes %1 early.</source>
        <translation>Die Heiß-Marke kommt %1 zu früh.</translation>
    </message>
    <message>
        <source>The needle is still below the hot mark at %1, where the sender&apos;s curve ends.</source>
        <translation>Der Zeiger steht bei %1, wo die Kennlinie des Gebers endet, noch unter der Heiß-Marke.</translation>
    </message>
    <message>
        <source>The needle is past the hot mark already where the sender&apos;s curve begins.</source>
        <translation>Der Zeiger steht schon am Anfang der Kennlinie des Gebers über der Heiß-Marke.</translation>
    </message>
    <message>
        <source>%1 has no curve to hold against this gauge.</source>
        <translation>%1 hat keine Kennlinie, die sich mit dieser Anzeige vergleichen ließe.</translation>
    </message>
    <message>
        <source>At worst %1 ± %2 at %3 (k = 2).</source>
        <translation>Schlimmstens %1 ± %2 bei %3 (k = 2).</translation>
    </message>
    <message>
        <source>Its curve covers only %1 to %2.</source>
        <translation>Die Kennlinie reicht nur von %1 bis %2.</translation>
    </message>
</context>
<context>
    <name>ohmkin::match::DetailPanel</name>
    <message>
        <source>What is shown of this sender</source>
        <translation>Was von diesem Geber gezeigt wird</translation>
    </message>
    <message>
        <source>Error</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Warum</translation>
    </message>
    <message>
        <source>Dial</source>
        <translation>Skala</translation>
    </message>
    <message>
        <source>Trim</source>
        <translation>Abgleich</translation>
    </message>
    <message>
        <source>Indicated minus true, %1</source>
        <translation>Angezeigt minus wahr, %1</translation>
    </message>
    <message>
        <source>Why, from what, and whose word</source>
        <translation>Warum, woraus und nach wem</translation>
    </message>
    <message>
        <source>The dial this needle would need</source>
        <translation>Die Skala, die dieser Zeiger bräuchte</translation>
    </message>
    <message>
        <source>Resistors, and what fails how</source>
        <translation>Widerstände, und was wie ausfällt</translation>
    </message>
</context>
<context>
    <name>ohmkin::match::DialTab</name>
    <message>
        <source>Print…</source>
        <translation>Drucken…</translation>
    </message>
    <message>
        <source>Offset card</source>
        <translation>Korrekturkarte</translation>
    </message>
    <message>
        <source>Re-marked dial</source>
        <translation>Neue Skala</translation>
    </message>
    <message>
        <source>Dial re-marked for %1</source>
        <translation>Skala neu geteilt für %1</translation>
    </message>
    <message>
        <source>The dial cannot be re-marked: %1</source>
        <translation>Die Skala lässt sich nicht neu teilen: %1</translation>
    </message>
    <message>
        <source>offset card %1</source>
        <translation>Korrekturkarte %1</translation>
    </message>
    <message>
        <source>dial for %1</source>
        <translation>Skala für %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::match::ErrorTab</name>
    <message>
        <source>Check the band by Monte Carlo</source>
        <translation>Das Band durch Zufallsziehungen prüfen</translation>
    </message>
    <message>
        <source>Draws every input 100,000 times and outlines where 95 % of the errors lie. Esc cancels.</source>
        <translation>Zieht jede Eingangsgröße 100 000-mal und umrandet, wo 95 % der Fehler liegen. Esc bricht ab.</translation>
    </message>
    <message>
        <source>Outlined: 95 % of 100,000 draws. %1</source>
        <translation>Umrandet: 95 % von 100 000 Ziehungen. %1</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Hide check</source>
        <translation>Prüfung verbergen</translation>
    </message>
    <message>
        <source>Check by Monte Carlo</source>
        <translation>Durch Ziehungen prüfen</translation>
    </message>
    <message>
        <source>Check</source>
        <translation>Prüfen</translation>
    </message>
    <message>
        <source>The plot in numbers, or the plot again (Ctrl+T)</source>
        <translation>Die Kurve in Zahlen, oder wieder die Kurve (Strg+T)</translation>
    </message>
    <message>
        <source>Table</source>
        <translation>Tabelle</translation>
    </message>
    <message>
        <source>Plot</source>
        <translation>Kurve</translation>
    </message>
</context>
<context>
    <name>ohmkin::match::ErrorTable</name>
    <message>
        <source>Indicated minus true, as a table</source>
        <translation>Angezeigt minus wahr, als Tabelle</translation>
    </message>
    <message>
        <source>Coolant, %1</source>
        <translation>Kühlmittel, %1</translation>
    </message>
    <message>
        <source>%1: error, %2</source>
        <translation>%1: Fehler, %2</translation>
    </message>
    <message>
        <source>± (k = 2), %1</source>
        <translation>± (k = 2), %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::match::MatchPage</name>
    <message>
        <source>Type the question</source>
        <translation>Frage eingeben</translation>
    </message>
    <message>
        <source>Refused senders: show or hide</source>
        <translation>Abgelehnte Geber zeigen oder verbergen</translation>
    </message>
    <message>
        <source>Next reading of the question</source>
        <translation>Nächste Lesart der Frage</translation>
    </message>
    <message>
        <source>Previous reading of the question</source>
        <translation>Vorige Lesart der Frage</translation>
    </message>
    <message>
        <source>&amp;Keep with a job…</source>
        <translation>Bei einem Auftrag &amp;behalten…</translation>
    </message>
    <message>
        <source>Keep the answer with a job</source>
        <translation>Die Antwort bei einem Auftrag behalten</translation>
    </message>
    <message>
        <source>Error plot or table</source>
        <translation>Fehlerkurve oder Tabelle</translation>
    </message>
</context>
<context>
    <name>ohmkin::match::NeedlePanel</name>
    <message>
        <source>%1: its curve does not reach %2</source>
        <translation>%1: die Kennlinie reicht nicht bis %2</translation>
    </message>
    <message>
        <source>%1: no curve to show</source>
        <translation>%1: keine Kennlinie zu zeigen</translation>
    </message>
    <message>
        <source>%1: below the first mark</source>
        <translation>%1: unter der ersten Marke</translation>
    </message>
    <message>
        <source>%1: past the last mark</source>
        <translation>%1: über der letzten Marke</translation>
    </message>
    <message>
        <source>%1 shows %2</source>
        <translation>%1 zeigt %2</translation>
    </message>
    <message>
        <source>There is no gauge here whose needle could be shown.</source>
        <translation>Hier ist keine Anzeige, deren Zeiger sich zeigen ließe.</translation>
    </message>
    <message>
        <source>What the needle shows</source>
        <translation>Was der Zeiger zeigt</translation>
    </message>
    <message>
        <source>Coolant temperature</source>
        <translation>Kühlmitteltemperatur</translation>
    </message>
    <message>
        <source>true %1</source>
        <translation>wahr %1</translation>
    </message>
    <message>
        <source>fitted now: %1</source>
        <translation>jetzt eingebaut: %1</translation>
    </message>
    <message>
        <source>likely fitted: %1</source>
        <translation>wahrscheinlich eingebaut: %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::match::ResultSheet</name>
    <message>
        <source>Which way the facts are</source>
        <translation>Wie die Tatsachen liegen</translation>
    </message>
    <message>
        <source>Show refused</source>
        <translation>Abgelehnte zeigen</translation>
    </message>
    <message>
        <source>Senders that are not recommended, and why (Ctrl+R)</source>
        <translation>Nicht empfohlene Geber, und warum (Strg+R)</translation>
    </message>
    <message>
        <source>Senders, best first</source>
        <translation>Geber, beste zuerst</translation>
    </message>
    <message>
        <source>Hide refused</source>
        <translation>Abgelehnte verbergen</translation>
    </message>
    <message>
        <source>%1 considered · %2 shown</source>
        <translation>%1 betrachtet · %2 gezeigt</translation>
    </message>
    <message>
        <source>No sender of this catalogue can be recommended here.</source>
        <translation>Kein Geber dieses Katalogs kann hier empfohlen werden.</translation>
    </message>
</context>
<context>
    <name>ohmkin::match::StartPage</name>
    <message>
        <source>For example</source>
        <translation>Zum Beispiel</translation>
    </message>
    <message>
        <source>What do you have?</source>
        <translation>Was haben Sie?</translation>
    </message>
    <message>
        <source>Type it above as it comes, in any order: model year, vehicle line, cluster option, casting number of the head, the date cast beside it. The more you say the fewer answers are left.</source>
        <translation>Geben Sie es oben ein, wie es kommt, in beliebiger Reihenfolge: Modelljahr, Baureihe, Instrumentenausstattung, Gussnummer des Kopfes, das Datum daneben. Je mehr Sie sagen, desto weniger Antworten bleiben.</translation>
    </message>
    <message>
        <source>Not enough to go on yet</source>
        <translation>Noch zu wenig</translation>
    </message>
    <message>
        <source>Example: %1</source>
        <translation>Beispiel: %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::match::TrimTab</name>
    <message>
        <source>Print…</source>
        <translation>Drucken…</translation>
    </message>
    <message>
        <source>Trim sheet</source>
        <translation>Abgleichblatt</translation>
    </message>
    <message>
        <source>Resistors, and what fails how</source>
        <translation>Widerstände, und was wie ausfällt</translation>
    </message>
    <message>
        <source>no sender</source>
        <translation>kein Geber</translation>
    </message>
    <message>
        <source>a sender with resistors</source>
        <translation>ein Geber mit Widerständen</translation>
    </message>
    <message>
        <source>trim sheet %1</source>
        <translation>Abgleichblatt %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure</name>
    <message>
        <source>Pass</source>
        <translation>Bestanden</translation>
    </message>
    <message>
        <source>Fail</source>
        <translation>Nicht bestanden</translation>
    </message>
    <message>
        <source>Undecided</source>
        <translation>Nicht entschieden</translation>
    </message>
    <message>
        <source>Cannot be compared</source>
        <translation>Nicht vergleichbar</translation>
    </message>
    <message>
        <source>Write the number on the part, or what family it claims to be: then it is judged here.</source>
        <translation>Nennen Sie die Nummer auf dem Teil oder die Familie, zu der es gehören soll: dann wird es hier beurteilt.</translation>
    </message>
    <message>
        <source>No curve yet. %1</source>
        <translation>Noch keine Kennlinie. %1</translation>
    </message>
    <message>
        <source>%1, established from %2 to %3; scatter %4 % of ohms. %5</source>
        <translation>%1, belegt von %2 bis %3; Streuung %4 % der Ohm. %5</translation>
    </message>
    <message>
        <source>What it claims to be</source>
        <translation>Was es sein soll</translation>
    </message>
    <message>
        <source>Is it good</source>
        <translation>Ist es gut?</translation>
    </message>
    <message>
        <source>Against what it read earlier%1%2</source>
        <translation>Gegen das, was es früher zeigte%1%2</translation>
    </message>
    <message>
        <source>, lot %1</source>
        <translation>, Los %1</translation>
    </message>
    <message>
        <source>These readings</source>
        <translation>Diese Messwerte</translation>
    </message>
    <message>
        <source>Readings that do not belong</source>
        <translation>Messwerte, die nicht dazugehören</translation>
    </message>
    <message>
        <source>How they were taken</source>
        <translation>Wie gemessen wurde</translation>
    </message>
    <message>
        <source>Whose curve it is</source>
        <translation>Wessen Kennlinie es ist</translation>
    </message>
    <message>
        <source>The barometer&apos;s pressure could mean two things; answer above.</source>
        <translation>Der Druck am Barometer kann zweierlei heißen; antworten Sie oben.</translation>
    </message>
    <message>
        <source>Whose curve it is:</source>
        <translation>Wessen Kennlinie es ist:</translation>
    </message>
    <message>
        <source>a curve established from %1 to %2</source>
        <translation>eine Kennlinie, belegt von %1 bis %2</translation>
    </message>
    <message>
        <source>families drawn: %1</source>
        <translation>gezeichnete Familien: %1</translation>
    </message>
    <message>
        <source>%1 in %2</source>
        <translation>%1 in %2</translation>
    </message>
    <message>
        <source>reading</source>
        <translation>Messwert</translation>
    </message>
    <message>
        <source>readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>curve</source>
        <translation>Kennlinie</translation>
    </message>
    <message>
        <source>curves</source>
        <translation>Kennlinien</translation>
    </message>
    <message>
        <source>%1 overload</source>
        <translation>%1 Überlauf</translation>
    </message>
    <message>
        <source>%1 could not be read</source>
        <translation>%1 waren nicht zu lesen</translation>
    </message>
    <message>
        <source>cell</source>
        <translation>Zelle</translation>
    </message>
    <message>
        <source>cells</source>
        <translation>Zellen</translation>
    </message>
    <message>
        <source>read as such files were put right before</source>
        <translation>gelesen, wie solche Dateien früher richtiggestellt wurden</translation>
    </message>
    <message>
        <source>read as files of %1 were put right before</source>
        <translation>gelesen, wie Dateien von %1 früher richtiggestellt wurden</translation>
    </message>
    <message>
        <source>This very file is in already: imported on %1%2, as import %3. Bringing it in again would change nothing.</source>
        <translation>Genau diese Datei ist schon da: übernommen am %1%2, als Übernahme %3. Sie noch einmal zu übernehmen würde nichts ändern.</translation>
    </message>
    <message>
        <source> by %1</source>
        <translation> von %1</translation>
    </message>
    <message>
        <source>The curve</source>
        <translation>Die Kennlinie</translation>
    </message>
    <message>
        <source>This curve</source>
        <translation>Diese Kennlinie</translation>
    </message>
    <message>
        <source>The file</source>
        <translation>Die Datei</translation>
    </message>
    <message>
        <source>the temperature</source>
        <translation>die Temperatur</translation>
    </message>
    <message>
        <source>a resistance</source>
        <translation>ein Widerstand</translation>
    </message>
    <message>
        <source>the time</source>
        <translation>die Zeit</translation>
    </message>
    <message>
        <source>which curve</source>
        <translation>welche Kennlinie</translation>
    </message>
    <message>
        <source>heating or cooling</source>
        <translation>Erwärmen oder Abkühlen</translation>
    </message>
    <message>
        <source>not used</source>
        <translation>nicht benutzt</translation>
    </message>
    <message>
        <source>year first</source>
        <translation>Jahr zuerst</translation>
    </message>
    <message>
        <source>day first</source>
        <translation>Tag zuerst</translation>
    </message>
    <message>
        <source>month first</source>
        <translation>Monat zuerst</translation>
    </message>
    <message>
        <source>column %1 is %2</source>
        <translation>Spalte %1 ist %2</translation>
    </message>
    <message>
        <source>the file&apos;s only curve</source>
        <translation>die einzige Kennlinie der Datei</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>Leads held together</source>
        <translation>Messleitungen zusammengehalten</translation>
    </message>
    <message>
        <source>the ohms they show, for example 0.2</source>
        <translation>die Ohm, die sie zeigen, zum Beispiel 0,2</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::AnswerView</name>
    <message>
        <source>One reading suffices to begin.</source>
        <translation>Ein Messwert genügt für den Anfang.</translation>
    </message>
    <message>
        <source>Whose curve is it?</source>
        <translation>Wessen Kennlinie ist es?</translation>
    </message>
    <message>
        <source>Is it good?</source>
        <translation>Ist es gut?</translation>
    </message>
    <message>
        <source>Remarks</source>
        <translation>Anmerkungen</translation>
    </message>
    <message>
        <source>This catalogue has no resistance families to compare with.</source>
        <translation>Dieser Katalog hat keine Widerstandsfamilien zum Vergleichen.</translation>
    </message>
    <message>
        <source>Whose curve it is needs no further reading</source>
        <translation>Wessen Kennlinie es ist, braucht keinen weiteren Messwert</translation>
    </message>
    <message>
        <source>Begin at %1</source>
        <translation>Beginnen bei %1</translation>
    </message>
    <message>
        <source>Measure next at %1</source>
        <translation>Als Nächstes messen bei %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::BenchPage</name>
    <message>
        <source>What to do</source>
        <translation>Was zu tun ist</translation>
    </message>
    <message>
        <source>By hand</source>
        <translation>Von Hand</translation>
    </message>
    <message>
        <source>At the counter</source>
        <translation>Am Tresen</translation>
    </message>
    <message>
        <source>From a file</source>
        <translation>Aus Datei</translation>
    </message>
    <message>
        <source>Kept</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Type readings</source>
        <translation>Messwerte eingeben</translation>
    </message>
    <message>
        <source>Next part of the bench</source>
        <translation>Nächster Teil des Messplatzes</translation>
    </message>
    <message>
        <source>Previous part of the bench</source>
        <translation>Voriger Teil des Messplatzes</translation>
    </message>
    <message>
        <source>Stop reading the file</source>
        <translation>Lesen der Datei abbrechen</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::CurvePlot</name>
    <message>
        <source>Ohms over temperature</source>
        <translation>Ohm über Temperatur</translation>
    </message>
    <message>
        <source>measure next</source>
        <translation>als Nächstes messen</translation>
    </message>
    <message numerus="yes">
        <source>%n reading(s)</source>
        <translation>
            <numerusform>%n Messwert</numerusform>
            <numerusform>%n Messwerte</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::FileColumns</name>
    <message>
        <source>temperature, °C</source>
        <translation>Temperatur, °C</translation>
    </message>
    <message>
        <source>temperature, °F</source>
        <translation>Temperatur, °F</translation>
    </message>
    <message>
        <source>temperature, K</source>
        <translation>Temperatur, K</translation>
    </message>
    <message>
        <source>resistance, Ω</source>
        <translation>Widerstand, Ω</translation>
    </message>
    <message>
        <source>resistance, kΩ</source>
        <translation>Widerstand, kΩ</translation>
    </message>
    <message>
        <source>resistance, MΩ</source>
        <translation>Widerstand, MΩ</translation>
    </message>
    <message>
        <source>time, s</source>
        <translation>Zeit, s</translation>
    </message>
    <message>
        <source>time, ms</source>
        <translation>Zeit, ms</translation>
    </message>
    <message>
        <source>time, min</source>
        <translation>Zeit, min</translation>
    </message>
    <message>
        <source>time, h</source>
        <translation>Zeit, h</translation>
    </message>
    <message>
        <source>time of day</source>
        <translation>Uhrzeit</translation>
    </message>
    <message>
        <source>date, year first</source>
        <translation>Datum, Jahr zuerst</translation>
    </message>
    <message>
        <source>date, day first</source>
        <translation>Datum, Tag zuerst</translation>
    </message>
    <message>
        <source>date, month first</source>
        <translation>Datum, Monat zuerst</translation>
    </message>
    <message>
        <source>which curve</source>
        <translation>welche Kennlinie</translation>
    </message>
    <message>
        <source>heating or cooling</source>
        <translation>Erwärmen oder Abkühlen</translation>
    </message>
    <message>
        <source>not used</source>
        <translation>nicht benutzt</translation>
    </message>
    <message>
        <source>Cells are parted by</source>
        <translation>Zellen sind getrennt durch</translation>
    </message>
    <message>
        <source>Decimals are marked by</source>
        <translation>Dezimalzeichen ist</translation>
    </message>
    <message>
        <source>First rows of the file</source>
        <translation>Erste Zeilen der Datei</translation>
    </message>
    <message>
        <source>comma</source>
        <translation>Komma</translation>
    </message>
    <message>
        <source>semicolon</source>
        <translation>Semikolon</translation>
    </message>
    <message>
        <source>tab</source>
        <translation>Tabulator</translation>
    </message>
    <message>
        <source>bar</source>
        <translation>Strich</translation>
    </message>
    <message>
        <source>blanks</source>
        <translation>Leerzeichen</translation>
    </message>
    <message>
        <source>point, 1.5</source>
        <translation>Punkt, 1.5</translation>
    </message>
    <message>
        <source>comma, 1,5</source>
        <translation>Komma, 1,5</translation>
    </message>
    <message>
        <source>Decimals</source>
        <translation>Dezimalzeichen</translation>
    </message>
    <message>
        <source>Column %1</source>
        <translation>Spalte %1</translation>
    </message>
    <message>
        <source>%1 is</source>
        <translation>%1 ist</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::FileDesk</name>
    <message>
        <source>Drop a file of readings here</source>
        <translation>Eine Datei mit Messwerten hierher ziehen</translation>
    </message>
    <message>
        <source>A table of temperature and ohms as a spreadsheet, a logger or a meter writes it: comma, semicolon or tab, any decimal mark, °C, °F or K, one curve or many. How it was read is shown first and can be put right; nothing is written until you bring it in.</source>
        <translation>Eine Tabelle von Temperatur und Ohm, wie eine Tabellenkalkulation, ein Logger oder ein Messgerät sie schreibt: Komma, Semikolon oder Tabulator, jedes Dezimalzeichen, °C, °F oder K, eine Kennlinie oder viele. Zuerst wird gezeigt, wie gelesen wurde, und kann berichtigt werden; geschrieben wird nichts, bevor Sie übernehmen.</translation>
    </message>
    <message>
        <source>&amp;Open a file…</source>
        <translation>Datei ö&amp;ffnen…</translation>
    </message>
    <message>
        <source>How the file was read</source>
        <translation>Wie die Datei gelesen wurde</translation>
    </message>
    <message>
        <source>Cells that could not be read</source>
        <translation>Zellen, die nicht zu lesen waren</translation>
    </message>
    <message>
        <source>Line : column</source>
        <translation>Zeile : Spalte</translation>
    </message>
    <message>
        <source>Found</source>
        <translation>Gefunden</translation>
    </message>
    <message>
        <source>Expected</source>
        <translation>Erwartet</translation>
    </message>
    <message>
        <source>How it was read</source>
        <translation>Wie gelesen wurde</translation>
    </message>
    <message>
        <source>Whose curve is it?</source>
        <translation>Wessen Kennlinie ist es?</translation>
    </message>
    <message>
        <source>Curves found</source>
        <translation>Gefundene Kennlinien</translation>
    </message>
    <message>
        <source>Open a file of readings</source>
        <translation>Datei mit Messwerten öffnen</translation>
    </message>
    <message>
        <source>Tables (*.csv *.tsv *.txt *.dat *.log);;All files (*)</source>
        <translation>Tabellen (*.csv *.tsv *.txt *.dat *.log);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Reading…</source>
        <translation>Wird gelesen…</translation>
    </message>
    <message>
        <source>%1 cells could not be read; their rows are left out. The first %2:</source>
        <translation>%1 Zellen waren nicht zu lesen; ihre Zeilen bleiben weg. Die ersten %2:</translation>
    </message>
    <message>
        <source>Cells that could not be read; their rows are left out:</source>
        <translation>Zellen, die nicht zu lesen waren; ihre Zeilen bleiben weg:</translation>
    </message>
    <message>
        <source>Stopped before it was read; nothing was brought in.</source>
        <translation>Vor dem Lesen angehalten; nichts wurde übernommen.</translation>
    </message>
    <message>
        <source>Write the number of the part where the file does not say it, and leave out what does not belong: a curve without a part is kept, but matching cannot use it.</source>
        <translation>Nennen Sie die Teilenummer, wo die Datei sie nicht sagt, und lassen Sie weg, was nicht dazugehört: eine Kennlinie ohne Teil wird behalten, aber das Zuordnen kann sie nicht brauchen.</translation>
    </message>
    <message>
        <source>Bringing in…</source>
        <translation>Wird übernommen…</translation>
    </message>
    <message>
        <source>Cancelled; nothing was brought in.</source>
        <translation>Abgebrochen; nichts wurde übernommen.</translation>
    </message>
    <message>
        <source>Not brought in. %1</source>
        <translation>Nicht übernommen. %1</translation>
    </message>
    <message>
        <source>How such files are read is remembered.</source>
        <translation>Wie solche Dateien zu lesen sind, bleibt gemerkt.</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::FileHead</name>
    <message>
        <source>Meter</source>
        <translation>Messgerät</translation>
    </message>
    <message>
        <source>Thermometer in the bath</source>
        <translation>Thermometer im Bad</translation>
    </message>
    <message>
        <source>Brought in by</source>
        <translation>Übernommen von</translation>
    </message>
    <message>
        <source>&amp;Open another…</source>
        <translation>Andere ö&amp;ffnen…</translation>
    </message>
    <message>
        <source>&amp;Bring in</source>
        <translation>&amp;Übernehmen</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>not said; a name, ± 0.8 %</source>
        <translation>nicht gesagt; ein Name, ± 0,8 %</translation>
    </message>
    <message>
        <source>not said; a name, ± 0.5 K</source>
        <translation>nicht gesagt; ein Name, ± 0,5 K</translation>
    </message>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
    <message>
        <source>%1 rows</source>
        <translation>%1 Zeilen</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::HandDesk</name>
    <message>
        <source>C&amp;lear the table</source>
        <translation>Tabelle &amp;leeren</translation>
    </message>
    <message>
        <source>The part</source>
        <translation>Das Teil</translation>
    </message>
    <message>
        <source>Bath, °C</source>
        <translation>Bad, °C</translation>
    </message>
    <message>
        <source>Bath, °F</source>
        <translation>Bad, °F</translation>
    </message>
    <message>
        <source>Row %1: %2</source>
        <translation>Zeile %1: %2</translation>
    </message>
    <message>
        <source>Enter goes on: bath, ohms, next row. A bath is a temperature, ice, cubes or boil; OL is overload; Space ticks; a block from a spreadsheet can be pasted.</source>
        <translation>Eingabe geht weiter: Bad, Ohm, nächste Zeile. Ein Bad ist eine Temperatur, ice (Eis), cubes (Eiswürfel) oder boil (siedend); OL ist Überlauf; Leertaste hakt an; ein Block aus einer Tabellenkalkulation lässt sich einfügen.</translation>
    </message>
    <message>
        <source>The shop&apos;s baths: %1.</source>
        <translation>Die Bäder des Betriebs: %1.</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::ImportList</name>
    <message>
        <source>no part said</source>
        <translation>kein Teil genannt</translation>
    </message>
    <message>
        <source>%1 of lot %2</source>
        <translation>%1 aus Los %2</translation>
    </message>
    <message>
        <source>taken out %1</source>
        <translation>herausgenommen %1</translation>
    </message>
    <message>
        <source>matching uses it</source>
        <translation>wird beim Zuordnen benutzt</translation>
    </message>
    <message>
        <source>kept, without a curve</source>
        <translation>behalten, ohne Kennlinie</translation>
    </message>
    <message>
        <source>import %1</source>
        <translation>Übernahme %1</translation>
    </message>
    <message>
        <source>run %1</source>
        <translation>Lauf %1</translation>
    </message>
    <message>
        <source>by hand: %1</source>
        <translation>von Hand: %1</translation>
    </message>
    <message>
        <source>not said</source>
        <translation>nicht gesagt</translation>
    </message>
    <message>
        <source>import %1, %2</source>
        <translation>Übernahme %1, %2</translation>
    </message>
    <message>
        <source>run %1, %2</source>
        <translation>Lauf %1, %2</translation>
    </message>
    <message>
        <source>Nothing is kept yet: keep a curve under By hand, or bring in a file.</source>
        <translation>Noch ist nichts behalten: behalten Sie eine Kennlinie unter „Von Hand“ oder übernehmen Sie eine Datei.</translation>
    </message>
    <message>
        <source>What is kept</source>
        <translation>Was behalten ist</translation>
    </message>
    <message>
        <source>Number</source>
        <translation>Nummer</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>By</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>Readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>Curves</source>
        <translation>Kennlinien</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Measured with</source>
        <translation>Gemessen mit</translation>
    </message>
    <message>
        <source>&amp;Take it out again…</source>
        <translation>Wieder &amp;herausnehmen…</translation>
    </message>
    <message>
        <source>&amp;Leave it in</source>
        <translation>&amp;Darin lassen</translation>
    </message>
    <message>
        <source>What is kept of the bench</source>
        <translation>Was vom Messplatz behalten ist</translation>
    </message>
    <message>
        <source>Take %1 out of the catalogue, with its %2 readings and what curves were made of them? The file itself stays where it is and can be brought in again.</source>
        <translation>%1 mit ihren %2 Messwerten und den daraus entstandenen Kennlinien aus dem Katalog nehmen? Die Datei selbst bleibt, wo sie ist, und kann wieder übernommen werden.</translation>
    </message>
    <message>
        <source>Take %1 out of the catalogue, with its %2 readings and the curve that was made of them? They were typed in: they cannot be brought back.</source>
        <translation>%1 mit seinen %2 Messwerten und der daraus entstandenen Kennlinie aus dem Katalog nehmen? Sie wurden eingetippt: zurückholen lassen sie sich nicht.</translation>
    </message>
    <message>
        <source>Yes, &amp;take it out</source>
        <translation>Ja, &amp;herausnehmen</translation>
    </message>
    <message>
        <source>Not taken out. %1</source>
        <translation>Nicht herausgenommen. %1</translation>
    </message>
    <message>
        <source>Out again: %1. Matching no longer uses it.</source>
        <translation>Wieder heraus: %1. Das Zuordnen benutzt es nicht mehr.</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::KeepForm</name>
    <message>
        <source>Number on the part</source>
        <translation>Nummer auf dem Teil</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Los</translation>
    </message>
    <message>
        <source>Family it claims to be</source>
        <translation>Familie, zu der es gehören soll</translation>
    </message>
    <message>
        <source>Measured by</source>
        <translation>Gemessen von</translation>
    </message>
    <message>
        <source>&amp;Keep this curve</source>
        <translation>Diese Kennlinie &amp;behalten</translation>
    </message>
    <message>
        <source>number on the part</source>
        <translation>Nummer auf dem Teil</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>As the part says</source>
        <translation>Wie das Teil sagt</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>Claims to be</source>
        <translation>Soll gehören zu</translation>
    </message>
    <message>
        <source>Not kept. %1</source>
        <translation>Nicht behalten. %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::OpenQuestions</name>
    <message>
        <source>What the file leaves open</source>
        <translation>Was die Datei offenlässt</translation>
    </message>
    <message>
        <source>%1 (taken for now)</source>
        <translation>%1 (vorerst angenommen)</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::QuickDesk</name>
    <message>
        <source>Ohms of the cold sender</source>
        <translation>Ohm des kalten Gebers</translation>
    </message>
    <message>
        <source>Temperature of the room</source>
        <translation>Temperatur des Raums</translation>
    </message>
    <message>
        <source>How well the temperature is known</source>
        <translation>Wie gut die Temperatur bekannt ist</translation>
    </message>
    <message>
        <source>as the meter shows, for example 720</source>
        <translation>wie das Messgerät zeigt, zum Beispiel 720</translation>
    </message>
    <message>
        <source>20 °C</source>
        <translation>20 °C</translation>
    </message>
    <message>
        <source>a counter&apos;s thermometer, ± 2 K</source>
        <translation>ein Thermometer am Tresen, ± 2 K</translation>
    </message>
    <message>
        <source>just room temperature, ± 5 K</source>
        <translation>bloß Raumtemperatur, ± 5 K</translation>
    </message>
    <message>
        <source>measured beside it, ± 0.5 K</source>
        <translation>daneben gemessen, ± 0,5 K</translation>
    </message>
    <message>
        <source>Ohms, cold</source>
        <translation>Ohm, kalt</translation>
    </message>
    <message>
        <source>At</source>
        <translation>Bei</translation>
    </message>
    <message>
        <source>Which is</source>
        <translation>Nämlich</translation>
    </message>
    <message>
        <source>A cold sender at the counter</source>
        <translation>Ein kalter Geber am Tresen</translation>
    </message>
    <message>
        <source>Families that remain</source>
        <translation>Familien, die bleiben</translation>
    </message>
    <message>
        <source>One resistance, read before anything is heated, already leaves few families.</source>
        <translation>Ein einziger Widerstand, gelesen bevor etwas erwärmt ist, lässt schon wenige Familien übrig.</translation>
    </message>
    <message>
        <source>None of the families</source>
        <translation>Keine der Familien</translation>
    </message>
    <message>
        <source>%1 of %2 families remain</source>
        <translation>%1 von %2 Familien bleiben</translation>
    </message>
    <message>
        <source>%1: its curve does not reach so far</source>
        <translation>%1: die Kennlinie reicht nicht so weit</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::ReadingTable</name>
    <message>
        <source>Bath</source>
        <translation>Bad</translation>
    </message>
    <message>
        <source>Ohms</source>
        <translation>Ohm</translation>
    </message>
    <message>
        <source>Swapped</source>
        <translation>Getauscht</translation>
    </message>
    <message>
        <source>Run</source>
        <translation>Lauf</translation>
    </message>
    <message>
        <source>Steady</source>
        <translation>Ruhig</translation>
    </message>
    <message>
        <source>Past hex</source>
        <translation>Sechskant</translation>
    </message>
    <message>
        <source>Stirred</source>
        <translation>Gerührt</translation>
    </message>
    <message>
        <source>Bath: a temperature, ice, cubes, boil, or a bath of the shop</source>
        <translation>Bad: eine Temperatur, ice, cubes, boil oder ein Bad des Betriebs</translation>
    </message>
    <message>
        <source>Ohms as the meter shows them; OL where it shows overload</source>
        <translation>Ohm, wie das Messgerät sie zeigt; OL, wo es Überlauf zeigt</translation>
    </message>
    <message>
        <source>Ohms with the probes swapped</source>
        <translation>Ohm mit getauschten Prüfspitzen</translation>
    </message>
    <message>
        <source>Run: h for heating, c for cooling</source>
        <translation>Lauf: h für heizen, k für kühlen</translation>
    </message>
    <message>
        <source>Steady: moves less than half a per cent a minute; or the per cent it moves</source>
        <translation>Ruhig: bewegt sich weniger als ein halbes Prozent je Minute; oder das Prozent, um das es sich bewegt</translation>
    </message>
    <message>
        <source>Water over the hex, nothing touching the vessel</source>
        <translation>Wasser über dem Sechskant, nichts berührt das Gefäß</translation>
    </message>
    <message>
        <source>Readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::RowReader</name>
    <message>
        <source>Write what the thermometer in &apos;%1&apos; shows, and choose it above.</source>
        <translation>Schreiben Sie, was das Thermometer in „%1“ zeigt, und wählen Sie es oben.</translation>
    </message>
    <message>
        <source>&apos;%1&apos; is no bath: write a temperature, ice, cubes, boil, or a bath of the shop.</source>
        <translation>„%1“ ist kein Bad: schreiben Sie eine Temperatur, ice, cubes, boil oder ein Bad des Betriebs.</translation>
    </message>
    <message>
        <source>Altitude</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>Barometer</source>
        <translation>Barometer</translation>
    </message>
    <message>
        <source>heating</source>
        <translation>heizen</translation>
    </message>
    <message>
        <source>cooling</source>
        <translation>kühlen</translation>
    </message>
    <message>
        <source>&apos;%1&apos;: write h for heating or c for cooling.</source>
        <translation>„%1“: schreiben Sie h für heizen oder k für kühlen.</translation>
    </message>
    <message>
        <source>&apos;%1&apos;: per cent that the ohms move in a minute, or yes.</source>
        <translation>„%1“: Prozent, um die sich die Ohm in einer Minute bewegen, oder ja.</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>&apos;%1&apos;: write yes or no.</source>
        <translation>„%1“: schreiben Sie ja oder nein.</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::RunTable</name>
    <message>
        <source>no curve</source>
        <translation>keine Kennlinie</translation>
    </message>
    <message>
        <source>none of these, %1</source>
        <translation>keine von diesen, %1</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Curves found</source>
        <translation>Gefundene Kennlinien</translation>
    </message>
    <message>
        <source>Curve in the file</source>
        <translation>Kennlinie in der Datei</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Los</translation>
    </message>
    <message>
        <source>Claims to be</source>
        <translation>Soll gehören zu</translation>
    </message>
    <message>
        <source>Readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>From … to</source>
        <translation>Von … bis</translation>
    </message>
    <message>
        <source>Whose it is</source>
        <translation>Wessen sie ist</translation>
    </message>
    <message>
        <source>the file&apos;s only curve</source>
        <translation>die einzige Kennlinie der Datei</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::SetUp</name>
    <message>
        <source>Leads held together, ohms</source>
        <translation>Messleitungen zusammengehalten, Ohm</translation>
    </message>
    <message>
        <source>Meter</source>
        <translation>Messgerät</translation>
    </message>
    <message>
        <source>0.8 %</source>
        <translation>0,8 %</translation>
    </message>
    <message>
        <source>Thermometer in the bath</source>
        <translation>Thermometer im Bad</translation>
    </message>
    <message>
        <source>0.5 K</source>
        <translation>0,5 K</translation>
    </message>
    <message>
        <source>not zeroed</source>
        <translation>nicht genullt</translation>
    </message>
    <message>
        <source>Leads held together, Ω</source>
        <translation>Messleitungen zusammengehalten, Ω</translation>
    </message>
    <message>
        <source>%1: accuracy, ±</source>
        <translation>%1: Genauigkeit, ±</translation>
    </message>
    <message>
        <source>± %1</source>
        <translation>± %1</translation>
    </message>
    <message>
        <source>Another, by its accuracy</source>
        <translation>Anderes, nach seiner Genauigkeit</translation>
    </message>
    <message>
        <source>Not said: a usual digital one</source>
        <translation>Nicht gesagt: ein übliches digitales</translation>
    </message>
    <message>
        <source>Digital, as usual</source>
        <translation>Digital, wie üblich</translation>
    </message>
    <message>
        <source>Moving-coil, as usual</source>
        <translation>Drehspul, wie üblich</translation>
    </message>
    <message>
        <source>Not said: ± 1 K</source>
        <translation>Nicht gesagt: ± 1 K</translation>
    </message>
    <message>
        <source>Altitude</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>Barometer</source>
        <translation>Barometer</translation>
    </message>
    <message>
        <source>Is its pressure reduced to sea level?</source>
        <translation>Ist sein Druck auf Meereshöhe umgerechnet?</translation>
    </message>
    <message>
        <source>1600 m or 5250 ft</source>
        <translation>1600 m oder 5250 ft</translation>
    </message>
    <message>
        <source>none, or 1013 hPa</source>
        <translation>keins, oder 1013 hPa</translation>
    </message>
    <message>
        <source>Not known</source>
        <translation>Nicht bekannt</translation>
    </message>
    <message>
        <source>Yes: forecast, wall</source>
        <translation>Ja: Wetterbericht, Wand</translation>
    </message>
    <message>
        <source>No: sensor here</source>
        <translation>Nein: Fühler hier</translation>
    </message>
    <message>
        <source>Reduced to sea level?</source>
        <translation>Auf Meereshöhe umgerechnet?</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::SuspectBars</name>
    <message>
        <source>what it claims to be</source>
        <translation>was es sein soll</translation>
    </message>
    <message>
        <source>this part reads %1 % above it</source>
        <translation>dieses Teil liegt %1 % darüber</translation>
    </message>
    <message>
        <source>this part reads %1 % below it</source>
        <translation>dieses Teil liegt %1 % darunter</translation>
    </message>
    <message>
        <source>none of these</source>
        <translation>keine von diesen</translation>
    </message>
    <message>
        <source>another family</source>
        <translation>eine andere Familie</translation>
    </message>
    <message>
        <source>%1 other families together</source>
        <translation>%1 andere Familien zusammen</translation>
    </message>
    <message>
        <source>over 99 %</source>
        <translation>über 99 %</translation>
    </message>
    <message>
        <source>under 1 %</source>
        <translation>unter 1 %</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>Whose curve it is</source>
        <translation>Wessen Kennlinie es ist</translation>
    </message>
</context>
<context>
    <name>ohmkin::measure::VerdictCard</name>
    <message>
        <source>Is it good?</source>
        <translation>Ist es gut?</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::BlankSheet</name>
    <message>
        <source>&amp;Open a catalogue…</source>
        <translation>Katalog ö&amp;ffnen…</translation>
    </message>
    <message>
        <source>&amp;New demo catalogue…</source>
        <translation>&amp;Neuer Demokatalog…</translation>
    </message>
    <message>
        <source>No catalogue is open</source>
        <translation>Kein Katalog ist offen</translation>
    </message>
    <message>
        <source>Senders, gauges and castings are kept in one file that ends in .ohmkin. Open yours, or make the demo catalogue to try everything on.</source>
        <translation>Geber, Anzeigen und Gussteile stehen in einer Datei, die auf .ohmkin endet. Öffnen Sie Ihre, oder legen Sie den Demokatalog an, um alles auszuprobieren.</translation>
    </message>
    <message>
        <source>This catalogue cannot be opened</source>
        <translation>Dieser Katalog lässt sich nicht öffnen</translation>
    </message>
    <message>
        <source>Opening %1</source>
        <translation>%1 wird geöffnet</translation>
    </message>
    <message>
        <source>&amp;Save what still reads…</source>
        <translation>Lesbares &amp;retten…</translation>
    </message>
    <message>
        <source>Go back to a &amp;backup…</source>
        <translation>Zu einer &amp;Sicherung zurück…</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::BusyLine</name>
    <message>
        <source>Computing</source>
        <translation>Es wird gerechnet</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::CandidateList</name>
    <message>
        <source>Senders, best first</source>
        <translation>Geber, beste zuerst</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::CautionPanel</name>
    <message>
        <source>Cautions</source>
        <translation>Vorsicht</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::ChainView</name>
    <message>
        <source>The chain from dash gauge to engine</source>
        <translation>Die Kette von der Anzeige zum Motor</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::ChipRow</name>
    <message>
        <source>What was understood</source>
        <translation>Was verstanden wurde</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::CircuitView</name>
    <message>
        <source>Trim network</source>
        <translation>Abgleichnetz</translation>
    </message>
    <message>
        <source>gauge</source>
        <translation>Anzeige</translation>
    </message>
    <message>
        <source>feed</source>
        <translation>Speisung</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::DialView</name>
    <message>
        <source>Dial of the dash gauge</source>
        <translation>Skala der Anzeige</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::ErrorPlot</name>
    <message>
        <source>Indicated minus true</source>
        <translation>Angezeigt minus wahr</translation>
    </message>
    <message>
        <source>No curve to draw.</source>
        <translation>Keine Kennlinie zu zeichnen.</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::FailureTable</name>
    <message>
        <source>What fails</source>
        <translation>Was ausfällt</translation>
    </message>
    <message>
        <source>How</source>
        <translation>Wie</translation>
    </message>
    <message>
        <source>At the hot mark</source>
        <translation>An der Heiß-Marke</translation>
    </message>
    <message>
        <source>Noticed?</source>
        <translation>Bemerkt?</translation>
    </message>
    <message>
        <source>What fails how</source>
        <translation>Was wie ausfällt</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::FindingList</name>
    <message>
        <source>source: %1</source>
        <translation>Quelle: %1</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Warum</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::JointMark</name>
    <message>
        <source>%1 to %2: %3, %4</source>
        <translation>%1 zu %2: %3, %4</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::KeepWithJob</name>
    <message>
        <source>job %1</source>
        <translation>Auftrag %1</translation>
    </message>
    <message>
        <source>Reference of the job</source>
        <translation>Referenz des Auftrags</translation>
    </message>
    <message>
        <source>&amp;Keep</source>
        <translation>&amp;Behalten</translation>
    </message>
    <message>
        <source>Keep with a job</source>
        <translation>Bei einem Auftrag behalten</translation>
    </message>
    <message>
        <source>The customer&apos;s own word for the job, or the number of an open one</source>
        <translation>Das Wort des Kunden für den Auftrag, oder die Nummer eines offenen</translation>
    </message>
    <message>
        <source>reference, or number of an open job</source>
        <translation>Referenz, oder Nummer eines offenen Auftrags</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Enter keeps it with %1: %2.</source>
        <translation>Eingabe behält es bei %1: %2.</translation>
    </message>
    <message>
        <source>Enter begins a new job, “%1”.</source>
        <translation>Eingabe beginnt einen neuen Auftrag, „%1“.</translation>
    </message>
    <message>
        <source>Kept with job %1, “%2”.</source>
        <translation>Bei Auftrag %1, „%2“, behalten.</translation>
    </message>
    <message>
        <source>Not kept. %1</source>
        <translation>Nicht behalten. %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::LookCard</name>
    <message>
        <source>One look would settle it: %1</source>
        <translation>Ein Blick würde es klären: %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::parts::QueryBox</name>
    <message>
        <source>Year, vehicle line, cluster option, casting number, date in the casting … in any order</source>
        <translation>Jahr, Baureihe, Ausstattung, Gussnummer, Gussdatum … in beliebiger Reihenfolge</translation>
    </message>
    <message>
        <source>What do you have?</source>
        <translation>Was haben Sie?</translation>
    </message>
    <message>
        <source>Year, vehicle line, cluster option, casting number, date in the casting, in any order</source>
        <translation>Jahr, Baureihe, Ausstattung, Gussnummer, Gussdatum, in beliebiger Reihenfolge</translation>
    </message>
</context>
<context>
    <name>ohmkin::plan</name>
    <message>
        <source>%1 cannot be written: %2.</source>
        <translation>%1 lässt sich nicht schreiben: %2.</translation>
    </message>
    <message>
        <source>%1 cannot be read: %2.</source>
        <translation>%1 lässt sich nicht lesen: %2.</translation>
    </message>
    <message>
        <source>resistor %1 %2</source>
        <translation>Widerstand %1 %2</translation>
    </message>
    <message>
        <source>Not looked at</source>
        <translation>Nicht betrachtet</translation>
    </message>
    <message>
        <source>No sender to recommend</source>
        <translation>Kein Geber zu empfehlen</translation>
    </message>
    <message>
        <source>with %1</source>
        <translation>mit %1</translation>
    </message>
    <message>
        <source>worst %1</source>
        <translation>schlimmstens %1</translation>
    </message>
    <message>
        <source>%1 answers are possible with what is known; this is the likeliest.</source>
        <translation>%1 Antworten sind nach dem Bekannten möglich; dies ist die wahrscheinlichste.</translation>
    </message>
    <message>
        <source> (best for this dash)</source>
        <translation> (am besten für diese Anzeige)</translation>
    </message>
    <message>
        <source>Look: %1</source>
        <translation>Nachsehen: %1</translation>
    </message>
    <message>
        <source>Parts to buy, with the best engine for each dash: %1</source>
        <translation>Zu kaufende Teile, mit dem besten Motor für jede Anzeige: %1</translation>
    </message>
    <message>
        <source>casting %1</source>
        <translation>Gussteil %1</translation>
    </message>
    <message>
        <source>%1 more</source>
        <translation>%1 weitere</translation>
    </message>
    <message>
        <source>Not understood and left out: %1</source>
        <translation>Nicht verstanden und weggelassen: %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::plan::GridModel</name>
    <message>
        <source>%1 with %2</source>
        <translation>%1 mit %2</translation>
    </message>
</context>
<context>
    <name>ohmkin::plan::LineList</name>
    <message>
        <source>%1, line %2</source>
        <translation>%1, Zeile %2</translation>
    </message>
    <message>
        <source>a further one</source>
        <translation>eine weitere</translation>
    </message>
</context>
<context>
    <name>ohmkin::plan::PlanAnswer</name>
    <message>
        <source>Parts to buy, with the best engine for each dash</source>
        <translation>Zu kaufende Teile, mit dem besten Motor für jede Anzeige</translation>
    </message>
    <message>
        <source>none: no pair can be recommended</source>
        <translation>keine: kein Paar kann empfohlen werden</translation>
    </message>
    <message>
        <source>%1 with %2</source>
        <translation>%1 mit %2</translation>
    </message>
    <message>
        <source>One look would settle it: %1</source>
        <translation>Ein Blick würde es klären: %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::plan::PlanGrid</name>
    <message>
        <source>best for this dash</source>
        <translation>am besten für diese Anzeige</translation>
    </message>
    <message>
        <source>Look: %1</source>
        <translation>Nachsehen: %1</translation>
    </message>
    <message>
        <source>Engines</source>
        <translation>Motoren</translation>
    </message>
    <message>
        <source>Dashes</source>
        <translation>Anzeigen</translation>
    </message>
    <message>
        <source>Dashes against engines</source>
        <translation>Anzeigen gegen Motoren</translation>
    </message>
</context>
<context>
    <name>ohmkin::plan::PlanHead</name>
    <message>
        <source>Save plan…</source>
        <translation>Plan speichern…</translation>
    </message>
    <message>
        <source>Copy as text</source>
        <translation>Als Text kopieren</translation>
    </message>
    <message>
        <source>Print…</source>
        <translation>Drucken…</translation>
    </message>
    <message>
        <source>Open plan…</source>
        <translation>Plan öffnen…</translation>
    </message>
    <message>
        <source>Plan a swap</source>
        <translation>Einen Umbau planen</translation>
    </message>
    <message>
        <source>A plan saved before (Ctrl+Shift+O)</source>
        <translation>Ein früher gespeicherter Plan (Strg+Umschalt+O)</translation>
    </message>
    <message>
        <source>Keeps what is asked, to be opened again (Ctrl+S)</source>
        <translation>Behält, was gefragt ist, um es wieder zu öffnen (Strg+S)</translation>
    </message>
    <message>
        <source>The whole plan as plain text (Ctrl+Shift+C)</source>
        <translation>Der ganze Plan als einfacher Text (Strg+Umschalt+C)</translation>
    </message>
    <message>
        <source>Look at it, print it, or keep it as PDF or SVG (Ctrl+P)</source>
        <translation>Ansehen, drucken oder als PDF oder SVG behalten (Strg+P)</translation>
    </message>
    <message>
        <source>Swap plan</source>
        <translation>Umbauplan</translation>
    </message>
    <message>
        <source>Where to keep the plan</source>
        <translation>Wohin mit dem Plan</translation>
    </message>
    <message>
        <source>plan.json</source>
        <translation>plan.json</translation>
    </message>
    <message>
        <source>Plans (*.json);;All files (*)</source>
        <translation>Pläne (*.json);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Open a plan</source>
        <translation>Plan öffnen</translation>
    </message>
</context>
<context>
    <name>ohmkin::plan::PlanPage</name>
    <message>
        <source>Dashes: year, vehicle line, cluster option</source>
        <translation>Anzeigen: Jahr, Baureihe, Ausstattung</translation>
    </message>
    <message>
        <source>Donor engines: casting number, date in the casting, engine</source>
        <translation>Spendermotoren: Gussnummer, Gussdatum, Motor</translation>
    </message>
    <message>
        <source>Saved as %1</source>
        <translation>Gespeichert als %1</translation>
    </message>
    <message>
        <source>Not opened. %1</source>
        <translation>Nicht geöffnet. %1</translation>
    </message>
    <message>
        <source>Type the dashes</source>
        <translation>Anzeigen eingeben</translation>
    </message>
    <message>
        <source>Type the engines</source>
        <translation>Motoren eingeben</translation>
    </message>
    <message>
        <source>Go to the grid</source>
        <translation>Zur Übersicht gehen</translation>
    </message>
    <message>
        <source>Save the plan…</source>
        <translation>Plan speichern…</translation>
    </message>
    <message>
        <source>Open a plan…</source>
        <translation>Plan öffnen…</translation>
    </message>
    <message>
        <source>Print the plan</source>
        <translation>Plan drucken</translation>
    </message>
    <message>
        <source>Try: %1 with %2</source>
        <translation>Versuchen: %1 mit %2</translation>
    </message>
    <message>
        <source> and </source>
        <translation> und </translation>
    </message>
    <message>
        <source>Now the dash</source>
        <translation>Jetzt die Anzeige</translation>
    </message>
    <message>
        <source>Now the engine</source>
        <translation>Jetzt der Motor</translation>
    </message>
    <message>
        <source>Write at least one dash on the left: the year and the vehicle line.</source>
        <translation>Schreiben Sie links mindestens eine Anzeige: Jahr und Baureihe.</translation>
    </message>
    <message>
        <source>Write at least one donor engine on the right: the casting number of its head, and the date cast beside it.</source>
        <translation>Schreiben Sie rechts mindestens einen Spendermotor: die Gussnummer seines Kopfes und das Gussdatum daneben.</translation>
    </message>
    <message>
        <source>Not enough to go on yet</source>
        <translation>Noch zu wenig</translation>
    </message>
    <message>
        <source>Which engine for which dash?</source>
        <translation>Welcher Motor für welche Anzeige?</translation>
    </message>
    <message>
        <source>Write the dashes on the left and the engines you could have on the right, a line each, as on the match page. Every pair is answered: the sender to buy, how far the needle is off, and the one look that would settle it.</source>
        <translation>Schreiben Sie links die Anzeigen und rechts die möglichen Motoren, je eine Zeile, wie auf der Seite Zuordnen. Jedes Paar wird beantwortet: der zu kaufende Geber, wie weit der Zeiger danebenliegt, und der eine Blick, der es klären würde.</translation>
    </message>
    <message>
        <source>Plan</source>
        <translation>Planen</translation>
    </message>
    <message>
        <source>no answer yet</source>
        <translation>noch keine Antwort</translation>
    </message>
    <message>
        <source>a dash and an engine</source>
        <translation>eine Anzeige und ein Motor</translation>
    </message>
    <message>
        <source>swap plan</source>
        <translation>Umbauplan</translation>
    </message>
    <message>
        <source>There is no plan to save yet.</source>
        <translation>Noch ist kein Plan zu speichern.</translation>
    </message>
    <message>
        <source>opening a plan</source>
        <translation>Öffnen eines Plans</translation>
    </message>
    <message>
        <source>Keep the plan with a job</source>
        <translation>Den Plan bei einem Auftrag behalten</translation>
    </message>
    <message>
        <source>the plan</source>
        <translation>der Plan</translation>
    </message>
</context>
<context>
    <name>ohmkin::printing</name>
    <message>
        <source>Nothing was printed</source>
        <translation>Nichts wurde gedruckt</translation>
    </message>
    <message>
        <source>Save as PDF</source>
        <translation>Als PDF speichern</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <source>Save as SVG</source>
        <translation>Als SVG speichern</translation>
    </message>
    <message>
        <source>Drawings (*.svg)</source>
        <translation>Zeichnungen (*.svg)</translation>
    </message>
    <message>
        <source>Print preview…</source>
        <translation>Druckvorschau…</translation>
    </message>
    <message>
        <source>Print…</source>
        <translation>Drucken…</translation>
    </message>
    <message>
        <source>Save as PDF…</source>
        <translation>Als PDF speichern…</translation>
    </message>
    <message>
        <source>Save as SVG…</source>
        <translation>Als SVG speichern…</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves</name>
    <message>
        <source>°C or °F</source>
        <translation>°C oder °F</translation>
    </message>
    <message>
        <source>K</source>
        <translation>K</translation>
    </message>
    <message>
        <source>Ω</source>
        <translation>Ω</translation>
    </message>
    <message>
        <source>mm, or 3/8 in</source>
        <translation>mm, oder 3/8 in</translation>
    </message>
    <message>
        <source>m</source>
        <translation>m</translation>
    </message>
    <message>
        <source>N·m or lbf·ft</source>
        <translation>N·m oder lbf·ft</translation>
    </message>
    <message>
        <source>° clockwise from up</source>
        <translation>° im Uhrzeigersinn von oben</translation>
    </message>
    <message>
        <source>V</source>
        <translation>V</translation>
    </message>
    <message>
        <source>kPa or psi</source>
        <translation>kPa oder psi</translation>
    </message>
    <message>
        <source>0.08, or 8 %</source>
        <translation>0,08 oder 8 %</translation>
    </message>
    <message>
        <source>Used by %1.</source>
        <translation>Benutzt von %1.</translation>
    </message>
    <message>
        <source>%1 was %2 and is %3 now.</source>
        <translation>%1 war %2 und ist jetzt %3.</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>leer</translation>
    </message>
    <message>
        <source>a %1</source>
        <translation>ein(e) %1</translation>
    </message>
    <message>
        <source>as 1971-08-22</source>
        <translation>wie 1971-08-22</translation>
    </message>
    <message>
        <source>a whole number</source>
        <translation>eine ganze Zahl</translation>
    </message>
    <message>
        <source>a number</source>
        <translation>eine Zahl</translation>
    </message>
    <message>
        <source>the shop&apos;s own</source>
        <translation>vom Betrieb</translation>
    </message>
    <message>
        <source>of the pack %1</source>
        <translation>vom Paket %1</translation>
    </message>
    <message>
        <source>Used by</source>
        <translation>Benutzt von</translation>
    </message>
    <message>
        <source>%1 %2, the first</source>
        <translation>%1 %2, die ersten</translation>
    </message>
    <message>
        <source>Sold today instead</source>
        <translation>Heute stattdessen verkauft</translation>
    </message>
    <message>
        <source>%1 (%2 of %3)</source>
        <translation>%1 (%2 von %3)</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::CataloguePage</name>
    <message>
        <source>What to do</source>
        <translation>Was zu tun ist</translation>
    </message>
    <message>
        <source>Part number, old number, vehicle line, casting, family, thread, connector …</source>
        <translation>Teilenummer, alte Nummer, Baureihe, Gussteil, Familie, Gewinde, Stecker …</translation>
    </message>
    <message>
        <source>Find anything</source>
        <translation>Irgendetwas suchen</translation>
    </message>
    <message>
        <source>Part number, old number, vehicle line, casting, family, thread, connector, in any spelling</source>
        <translation>Teilenummer, alte Nummer, Baureihe, Gussteil, Familie, Gewinde, Stecker, in jeder Schreibweise</translation>
    </message>
    <message>
        <source>Find</source>
        <translation>Suchen</translation>
    </message>
    <message>
        <source>Table</source>
        <translation>Tabelle</translation>
    </message>
    <message>
        <source>Shelf</source>
        <translation>Lager</translation>
    </message>
    <message>
        <source>Changes</source>
        <translation>Änderungen</translation>
    </message>
    <message>
        <source>Edit the thing shown</source>
        <translation>Das Gezeigte bearbeiten</translation>
    </message>
    <message>
        <source>Duplicate the thing shown as new</source>
        <translation>Das Gezeigte als neues verdoppeln</translation>
    </message>
    <message>
        <source>Delete the thing shown</source>
        <translation>Das Gezeigte löschen</translation>
    </message>
    <message>
        <source>Save what the form says</source>
        <translation>Speichern, was im Formular steht</translation>
    </message>
    <message>
        <source>Make something new</source>
        <translation>Etwas Neues anlegen</translation>
    </message>
    <message>
        <source>Sell one piece</source>
        <translation>Ein Stück verkaufen</translation>
    </message>
    <message>
        <source>Receive pieces</source>
        <translation>Zugang buchen</translation>
    </message>
    <message>
        <source>Count a bin by hand</source>
        <translation>Ein Fach von Hand zählen</translation>
    </message>
    <message>
        <source>Move pieces to another bin</source>
        <translation>Stücke in ein anderes Fach legen</translation>
    </message>
    <message>
        <source>Set the minimum</source>
        <translation>Mindestbestand setzen</translation>
    </message>
    <message>
        <source>Back to what was looked at before</source>
        <translation>Zurück zum vorher Betrachteten</translation>
    </message>
    <message>
        <source>Forward again</source>
        <translation>Wieder vor</translation>
    </message>
    <message>
        <source>Out of the form</source>
        <translation>Aus dem Formular</translation>
    </message>
    <message>
        <source>Next part of the catalogue</source>
        <translation>Nächster Teil des Katalogs</translation>
    </message>
    <message>
        <source>Previous part of the catalogue</source>
        <translation>Voriger Teil des Katalogs</translation>
    </message>
    <message numerus="yes">
        <source>%n found, best first</source>
        <translation>
            <numerusform>%n gefunden</numerusform>
            <numerusform>%n gefunden, beste zuerst</numerusform>
        </translation>
    </message>
    <message>
        <source>Nothing is known by that.</source>
        <translation>Unter diesem Namen ist nichts bekannt.</translation>
    </message>
    <message>
        <source>This catalogue is empty. Load a pack into it, or press Ctrl+N to make its first row: begin with a source.</source>
        <translation>Dieser Katalog ist leer. Laden Sie ein Paket hinein, oder legen Sie mit Strg+N seine erste Zeile an: beginnen Sie mit einer Quelle.</translation>
    </message>
    <message>
        <source>Type any number or name, with or without dashes and blanks: one letter may be wrong. The arrow keys go along what is found, Enter opens it.

Ctrl+N makes something new.</source>
        <translation>Geben Sie irgendeine Nummer oder einen Namen ein, mit oder ohne Striche und Leerzeichen: ein Buchstabe darf falsch sein. Die Pfeiltasten gehen durch das Gefundene, Eingabe öffnet es.

Strg+N legt etwas Neues an.</translation>
    </message>
    <message>
        <source>New %1</source>
        <translation>Neu: %1</translation>
    </message>
    <message>
        <source>Not undone. %1</source>
        <translation>Nicht rückgängig gemacht. %1</translation>
    </message>
    <message>
        <source>Not done again. %1</source>
        <translation>Nicht wiederholt. %1</translation>
    </message>
    <message>
        <source>Backups…</source>
        <translation>Sicherungen…</translation>
    </message>
    <message>
        <source>Copies of this catalogue: make, check, go back to one (Ctrl+B)</source>
        <translation>Sicherungen dieses Katalogs: machen, prüfen, zu einer zurückgehen (Strg+B)</translation>
    </message>
    <message>
        <source>a new %1</source>
        <translation>neu: %1</translation>
    </message>
    <message>
        <source>%1, being edited</source>
        <translation>%1, in Bearbeitung</translation>
    </message>
    <message>
        <source>a movement of %1, not made yet</source>
        <translation>eine noch nicht gebuchte Bewegung von %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::ChangeList</name>
    <message>
        <source>%1: %2 → %3</source>
        <translation>%1: %2 → %3</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>Nobody has changed it here.</source>
        <translation>Niemand hat es hier geändert.</translation>
    </message>
    <message>
        <source>Nothing was changed yet.</source>
        <translation>Noch wurde nichts geändert.</translation>
    </message>
    <message>
        <source>Changes, newest first</source>
        <translation>Änderungen, neueste zuerst</translation>
    </message>
    <message>
        <source>&amp;Take this change back</source>
        <translation>Diese Änderung &amp;zurücknehmen</translation>
    </message>
    <message>
        <source>Older ones</source>
        <translation>Ältere</translation>
    </message>
    <message>
        <source>Changes</source>
        <translation>Änderungen</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>By</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Not taken back. %1</source>
        <translation>Nicht zurückgenommen. %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::FieldRow</name>
    <message>
        <source>%1 *</source>
        <translation>%1 *</translation>
    </message>
    <message>
        <source>%1, must be said</source>
        <translation>%1, muss genannt werden</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::FoundList</name>
    <message>
        <source>none on the shelf</source>
        <translation>keiner am Lager</translation>
    </message>
    <message numerus="yes">
        <source>%n on the shelf</source>
        <translation>
            <numerusform>%n am Lager</numerusform>
            <numerusform>%n am Lager</numerusform>
        </translation>
    </message>
    <message>
        <source>What was found, best first</source>
        <translation>Was gefunden wurde, bestes zuerst</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::PartModel</name>
    <message>
        <source>Row %1, %2: %3</source>
        <translation>Zeile %1, %2: %3</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::PartTable</name>
    <message>
        <source>Remove row</source>
        <translation>Zeile entfernen</translation>
    </message>
    <message>
        <source>One place earlier</source>
        <translation>Eine Stelle nach vorn</translation>
    </message>
    <message>
        <source>Remove the chosen row (Ctrl+Delete)</source>
        <translation>Die gewählte Zeile entfernen (Strg+Entf)</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::ShelfDesk</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>What of the shelf</source>
        <translation>Was vom Lager</translation>
    </message>
    <message>
        <source>Only what holds</source>
        <translation>Nur was enthält</translation>
    </message>
    <message>
        <source>The shelf</source>
        <translation>Das Lager</translation>
    </message>
    <message>
        <source>Everything</source>
        <translation>Alles</translation>
    </message>
    <message>
        <source>Under the minimum</source>
        <translation>Unter dem Mindestbestand</translation>
    </message>
    <message>
        <source>Movements</source>
        <translation>Bewegungen</translation>
    </message>
    <message>
        <source>part number, name or bin</source>
        <translation>Teilenummer, Name oder Fach</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Pieces</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>Minimum</source>
        <translation>Mindestbestand</translation>
    </message>
    <message>
        <source>Bins</source>
        <translation>Fächer</translation>
    </message>
    <message>
        <source>not in this catalogue</source>
        <translation>nicht in diesem Katalog</translation>
    </message>
    <message>
        <source>Nothing is under its minimum.</source>
        <translation>Nichts liegt unter seinem Mindestbestand.</translation>
    </message>
    <message>
        <source>Nothing on the shelf.</source>
        <translation>Nichts am Lager.</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>By</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Bemerkung</translation>
    </message>
    <message>
        <source>Nothing came or went yet.</source>
        <translation>Noch ist nichts gekommen oder gegangen.</translation>
    </message>
    <message>
        <source>under the minimum</source>
        <translation>unter dem Mindestbestand</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::SourceBox</name>
    <message>
        <source>State a new source</source>
        <translation>Eine neue Quelle nennen</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::StockPanel</name>
    <message>
        <source>Sell</source>
        <translation>Verkaufen</translation>
    </message>
    <message>
        <source>Receive</source>
        <translation>Zugang</translation>
    </message>
    <message>
        <source>Count by hand</source>
        <translation>Von Hand zählen</translation>
    </message>
    <message>
        <source>Move to another bin</source>
        <translation>In ein anderes Fach</translation>
    </message>
    <message>
        <source>Set the minimum</source>
        <translation>Mindestbestand setzen</translation>
    </message>
    <message>
        <source>Bins of this part</source>
        <translation>Fächer dieses Teils</translation>
    </message>
    <message>
        <source>Sell &amp;one</source>
        <translation>&amp;Eins verkaufen</translation>
    </message>
    <message>
        <source>&amp;More…</source>
        <translation>&amp;Mehr…</translation>
    </message>
    <message>
        <source>One piece from the fullest bin (F4)</source>
        <translation>Ein Stück aus dem vollsten Fach (F4)</translation>
    </message>
    <message>
        <source>Receive, count, move, minimum</source>
        <translation>Zugang, Zählung, Umlagerung, Mindestbestand</translation>
    </message>
    <message>
        <source>On the shelf</source>
        <translation>Am Lager</translation>
    </message>
    <message>
        <source>Pieces</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>Bin</source>
        <translation>Fach</translation>
    </message>
    <message>
        <source>To bin</source>
        <translation>In Fach</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Bemerkung</translation>
    </message>
    <message>
        <source>Leave it</source>
        <translation>Lassen</translation>
    </message>
    <message>
        <source>fullest</source>
        <translation>vollstes</translation>
    </message>
    <message>
        <source>Under the minimum of %1.</source>
        <translation>Unter dem Mindestbestand von %1.</translation>
    </message>
    <message>
        <source>Minimum</source>
        <translation>Mindestbestand</translation>
    </message>
    <message>
        <source>%1  %2, %3</source>
        <translation>%1  %2, %3</translation>
    </message>
    <message>
        <source>Pieces: found &apos;%1&apos;, expected a whole number.</source>
        <translation>Stück: gefunden „%1“, erwartet eine ganze Zahl.</translation>
    </message>
    <message>
        <source>The minimum is %1 now.</source>
        <translation>Der Mindestbestand ist jetzt %1.</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::TableDesk</name>
    <message>
        <source>Kind of row</source>
        <translation>Art der Zeile</translation>
    </message>
    <message>
        <source>Only rows that hold</source>
        <translation>Nur Zeilen, in denen steht</translation>
    </message>
    <message>
        <source>Rows</source>
        <translation>Zeilen</translation>
    </message>
    <message>
        <source>only rows that hold …</source>
        <translation>nur Zeilen mit …</translation>
    </message>
    <message>
        <source>No such row</source>
        <translation>Keine solche Zeile</translation>
    </message>
    <message>
        <source>%1 rows</source>
        <translation>%1 Zeilen</translation>
    </message>
    <message>
        <source>%1 of %2 read</source>
        <translation>%1 von %2 gelesen</translation>
    </message>
    <message>
        <source>%1 and more</source>
        <translation>%1 und mehr</translation>
    </message>
    <message>
        <source>Not changed. %1</source>
        <translation>Nicht geändert. %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::ThingDesk</name>
    <message>
        <source>Back (Alt+Left)</source>
        <translation>Zurück (Alt+Links)</translation>
    </message>
    <message>
        <source>Forward (Alt+Right)</source>
        <translation>Vor (Alt+Rechts)</translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation>&amp;Bearbeiten</translation>
    </message>
    <message>
        <source>Change what is said (F2)</source>
        <translation>Ändern, was gesagt ist (F2)</translation>
    </message>
    <message>
        <source>More…</source>
        <translation>Mehr…</translation>
    </message>
    <message>
        <source>More to do with it</source>
        <translation>Mehr damit tun</translation>
    </message>
    <message>
        <source>&amp;Duplicate as new</source>
        <translation>Als neues &amp;verdoppeln</translation>
    </message>
    <message>
        <source>&amp;New of this kind</source>
        <translation>&amp;Neu von dieser Art</translation>
    </message>
    <message>
        <source>De&amp;lete…</source>
        <translation>&amp;Löschen…</translation>
    </message>
    <message>
        <source>&amp;Delete it</source>
        <translation>&amp;Löschen</translation>
    </message>
    <message>
        <source>&amp;Leave it</source>
        <translation>Lass&amp;en</translation>
    </message>
    <message>
        <source>Nothing was different: nothing was written.</source>
        <translation>Nichts war anders: nichts wurde geschrieben.</translation>
    </message>
    <message>
        <source>No longer there</source>
        <translation>Nicht mehr da</translation>
    </message>
    <message>
        <source>%1 was deleted, or never was in this catalogue.</source>
        <translation>%1 wurde gelöscht oder war nie in diesem Katalog.</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Delete %1? The change log keeps it, so that it can come back.</source>
        <translation>%1 löschen? Das Änderungsbuch behält es, so dass es wiederkommen kann.</translation>
    </message>
    <message>
        <source>Not deleted. %1</source>
        <translation>Nicht gelöscht. %1</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::ThingForm</name>
    <message>
        <source>&amp;Save</source>
        <translation>&amp;Speichern</translation>
    </message>
    <message>
        <source>&amp;Revert</source>
        <translation>&amp;Zurücksetzen</translation>
    </message>
    <message>
        <source>&amp;Close</source>
        <translation>S&amp;chließen</translation>
    </message>
    <message>
        <source>Save what the form says (Ctrl+S)</source>
        <translation>Speichern, was im Formular steht (Strg+S)</translation>
    </message>
    <message>
        <source>Back to what is kept</source>
        <translation>Zurück zu dem, was behalten ist</translation>
    </message>
    <message>
        <source>Close the form (Esc)</source>
        <translation>Formular schließen (Esc)</translation>
    </message>
    <message>
        <source>new %1</source>
        <translation>neu: %1</translation>
    </message>
    <message>
        <source>Not saved yet</source>
        <translation>Noch nicht gespeichert</translation>
    </message>
    <message>
        <source>It belongs to the pack %1. Once it is changed it is the shop&apos;s own; a later version of the pack is then held against it, and leaves it as it is.</source>
        <translation>Es gehört zum Paket %1. Einmal geändert, gehört es dem Betrieb; eine spätere Fassung des Pakets wird dann dagegengehalten und lässt es, wie es ist.</translation>
    </message>
    <message>
        <source>Not saved. %1</source>
        <translation>Nicht gespeichert. %1</translation>
    </message>
    <message>
        <source>This is not saved yet. Close once more to give it up.</source>
        <translation>Dies ist noch nicht gespeichert. Noch einmal schließen, um es aufzugeben.</translation>
    </message>
</context>
<context>
    <name>ohmkin::shelves::ThingView</name>
    <message>
        <source>What is said about it</source>
        <translation>Was darüber gesagt wird</translation>
    </message>
</context>
<context>
    <name>parts</name>
    <message>
        <source>look</source>
        <translation>nachsehen</translation>
    </message>
    <message>
        <source>Sender</source>
        <translation>Geber</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>nothing in this catalogue goes there</source>
        <translation>nichts in diesem Katalog passt dort hinein</translation>
    </message>
    <message>
        <source>dial marked in °C</source>
        <translation>Skala in °C</translation>
    </message>
    <message>
        <source>dial marked in °F</source>
        <translation>Skala in °F</translation>
    </message>
    <message>
        <source>where people look</source>
        <translation>wo man hinsieht</translation>
    </message>
    <message>
        <source>%1 without resistor</source>
        <translation>%1 ohne Widerstand</translation>
    </message>
    <message>
        <source>%1, k = 2</source>
        <translation>%1, k = 2</translation>
    </message>
    <message>
        <source>%1, fitted now</source>
        <translation>%1, jetzt eingebaut</translation>
    </message>
    <message>
        <source>%1, likely fitted</source>
        <translation>%1, wahrscheinlich eingebaut</translation>
    </message>
    <message>
        <source>now supplied as %1</source>
        <translation>jetzt geliefert als %1</translation>
    </message>
</context>
<context>
    <name>print</name>
    <message>
        <source>make a PDF of the SVG sheets named, and end</source>
        <translation>macht ein PDF aus den genannten SVG-Blättern und endet</translation>
    </message>
    <message>
        <source>where the PDF goes</source>
        <translation>wohin das PDF kommt</translation>
    </message>
</context>
</TS>
