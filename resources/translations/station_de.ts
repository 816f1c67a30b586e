<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de">
  <context>
    <name>say</name>
    <message>
      <source>0</source>
      <translation>0</translation>
    </message>
    <message>
      <source>0 left</source>
      <translation>0 übrig</translation>
    </message>
    <message>
      <source>0 left: order it, or count again</source>
      <translation>0 übrig: bestellen oder nachzählen</translation>
    </message>
    <message>
      <source>1 to 24 characters.</source>
      <translation>1 bis 24 Zeichen.</translation>
    </message>
    <message>
      <source>1.1: a tenth slower than the file says. Three sheets here tell it by themselves.</source>
      <translation>1,1: ein Zehntel langsamer, als die Datei sagt. Drei Platten hier zeigen es von selbst.</translation>
    </message>
    <message>
      <source>1/4 in MDF</source>
      <translation>MDF 1/4 in</translation>
    </message>
    <message>
      <source>1/4 in birch plywood</source>
      <translation>Birkensperrholz 1/4 in</translation>
    </message>
    <message>
      <source>1/8 in hardboard</source>
      <translation>Hartfaserplatte 1/8 in</translation>
    </message>
    <message>
      <source>100x100 mm</source>
      <translation>100x100 mm</translation>
    </message>
    <message>
      <source>100x150 mm</source>
      <translation>100x150 mm</translation>
    </message>
    <message>
      <source>100x50 mm</source>
      <translation>100x50 mm</translation>
    </message>
    <message>
      <source>3 mm MDF</source>
      <translation>MDF 3 mm</translation>
    </message>
    <message>
      <source>3/8 in birch plywood</source>
      <translation>Birkensperrholz 3/8 in</translation>
    </message>
    <message>
      <source>3x2 in</source>
      <translation>3x2 in</translation>
    </message>
    <message>
      <source>4x2 in</source>
      <translation>4x2 in</translation>
    </message>
    <message>
      <source>4x3 in</source>
      <translation>4x3 in</translation>
    </message>
    <message>
      <source>4x6 in</source>
      <translation>4x6 in</translation>
    </message>
    <message>
      <source>6 mm MDF</source>
      <translation>MDF 6 mm</translation>
    </message>
    <message>
      <source>6.5 mm birch plywood</source>
      <translation>Birkensperrholz 6,5 mm</translation>
    </message>
    <message>
      <source>9 mm birch plywood</source>
      <translation>Birkensperrholz 9 mm</translation>
    </message>
    <message>
      <source>A % stands in the middle of the file; it is passed over.</source>
      <translation>Mitten in der Datei steht ein %; es wird übergangen.</translation>
    </message>
    <message>
      <source>A PIN has 4 to 8 digits</source>
      <translation>Eine PIN hat 4 bis 8 Ziffern</translation>
    </message>
    <message>
      <source>A PIN is kept only as its hash</source>
      <translation>Eine PIN wird nur als Prüfsumme aufbewahrt</translation>
    </message>
    <message>
      <source>A batch has 1 to 99 sheets</source>
      <translation>Ein Los hat 1 bis 99 Platten</translation>
    </message>
    <message>
      <source>A batch has at most {most} {most|sheet|sheets}</source>
      <translation>Ein Los hat höchstens {most} {most|Platte|Platten}</translation>
    </message>
    <message>
      <source>A bit</source>
      <translation>Ein Fräser</translation>
    </message>
    <message>
      <source>A break ends after it begins</source>
      <translation>Eine Pause endet, nachdem sie begonnen hat</translation>
    </message>
    <message>
      <source>A cart</source>
      <translation>Ein Wagen</translation>
    </message>
    <message>
      <source>A cut file is being read</source>
      <translation>Eine Fräsdatei wird gelesen</translation>
    </message>
    <message>
      <source>A cut file that is approved</source>
      <translation>Eine freigegebene Fräsdatei</translation>
    </message>
    <message>
      <source>A cut file that was read</source>
      <translation>Eine eingelesene Fräsdatei</translation>
    </message>
    <message>
      <source>A cycle cannot run under G93; nothing is drilled here.</source>
      <translation>Ein Zyklus läuft nicht unter G93; hier wird nichts gebohrt.</translation>
    </message>
    <message>
      <source>A cycle cannot run while G41 or G42 is on; nothing is drilled here.</source>
      <translation>Ein Zyklus läuft nicht, solange G41 oder G42 gilt; hier wird nichts gebohrt.</translation>
    </message>
    <message>
      <source>A cycle cannot turn an axis; nothing is drilled here.</source>
      <translation>Ein Zyklus dreht keine Achse; hier wird nichts gebohrt.</translation>
    </message>
    <message>
      <source>A cycle needs X, Y or Z; nothing is drilled here.</source>
      <translation>Ein Zyklus braucht X, Y oder Z; hier wird nichts gebohrt.</translation>
    </message>
    <message>
      <source>A cycle needs {axis} and R; nothing is drilled here.</source>
      <translation>Ein Zyklus braucht {axis} und R; hier wird nichts gebohrt.</translation>
    </message>
    <message>
      <source>A file tells by its first line which list it is, or you say so. What it changes is shown before it counts.</source>
      <translation>Eine Datei sagt mit ihrer ersten Zeile, welche Liste sie ist, oder du sagst es. Was sie ändert, steht da, bevor es zählt.</translation>
    </message>
    <message>
      <source>A hold-down is in the way</source>
      <translation>Ein Niederhalter ist im Weg</translation>
    </message>
    <message>
      <source>A hold-down is in the way.</source>
      <translation>Ein Niederhalter ist im Weg.</translation>
    </message>
    <message>
      <source>A hold-down is in the way: {wrong}</source>
      <translation>Ein Niederhalter ist im Weg: {wrong}</translation>
    </message>
    <message>
      <source>A list has at most {n} {n|line|lines}</source>
      <translation>Eine Liste hat höchstens {n} {n|Zeile|Zeilen}</translation>
    </message>
    <message>
      <source>A mailer</source>
      <translation>Eine Versandtasche</translation>
    </message>
    <message>
      <source>A material</source>
      <translation>Ein Material</translation>
    </message>
    <message>
      <source>A moment.</source>
      <translation>Einen Moment.</translation>
    </message>
    <message>
      <source>A new PIN</source>
      <translation>Neue PIN</translation>
    </message>
    <message>
      <source>A new PIN for worker {id}</source>
      <translation>Neue PIN für Mitarbeiter {id}</translation>
    </message>
    <message>
      <source>A new one</source>
      <translation>Neu anlegen</translation>
    </message>
    <message>
      <source>A new part</source>
      <translation>Ein neues Teil</translation>
    </message>
    <message>
      <source>A new shape</source>
      <translation>Eine neue Form</translation>
    </message>
    <message>
      <source>A number is the weight, {unit}. Then close the pack.</source>
      <translation>Eine Zahl ist das Gewicht, {unit}. Dann das Paket schließen.</translation>
    </message>
    <message>
      <source>A number sets how many.</source>
      <translation>Eine Zahl sagt, wie viele.</translation>
    </message>
    <message>
      <source>A number up to {n}: how many {part} are in. A larger one: the weight, {unit}.</source>
      <translation>Eine Zahl bis {n}: wie viele {part} drin sind. Eine größere: das Gewicht, {unit}.</translation>
    </message>
    <message>
      <source>A pack is opened at packing</source>
      <translation>Ein Paket wird beim Packen geöffnet</translation>
    </message>
    <message>
      <source>A part of it is not known</source>
      <translation>Ein Teil davon ist unbekannt</translation>
    </message>
    <message>
      <source>A pass leaves its outline here, {long} mm into the piece.</source>
      <translation>Ein Durchgang verlässt hier seinen Umriss, {long} mm in das Stück hinein.</translation>
    </message>
    <message>
      <source>A piece is spoiled</source>
      <translation>Ein Teil ist Ausschuss</translation>
    </message>
    <message>
      <source>A piece lies there</source>
      <translation>Dort liegt ein Teil</translation>
    </message>
    <message>
      <source>A place is two numbers in mm</source>
      <translation>Eine Stelle sind zwei Zahlen in mm</translation>
    </message>
    <message>
      <source>A product</source>
      <translation>Ein Produkt</translation>
    </message>
    <message>
      <source>A product needs at least one part</source>
      <translation>Ein Produkt braucht mindestens ein Teil</translation>
    </message>
    <message>
      <source>A rack place for each part</source>
      <translation>Ein Regalplatz für jedes Teil</translation>
    </message>
    <message>
      <source>A radius arc must end elsewhere than it starts; read as a straight move.</source>
      <translation>Ein Bogen mit Radius muss anderswo enden, als er beginnt; als Gerade gelesen.</translation>
    </message>
    <message>
      <source>A rapid runs below the sheet's face.</source>
      <translation>Ein Eilgang läuft unter der Oberseite der Platte.</translation>
    </message>
    <message>
      <source>A reason is asked for, no number</source>
      <translation>Ein Grund ist gefragt, keine Zahl</translation>
    </message>
    <message>
      <source>A recount or a correction mends it.</source>
      <translation>Nachzählen oder Berichtigen bringt es in Ordnung.</translation>
    </message>
    <message>
      <source>A recount or a correction mends older acts.</source>
      <translation>Nachzählen oder Berichtigen bringt Älteres in Ordnung.</translation>
    </message>
    <message>
      <source>A router</source>
      <translation>Eine Fräse</translation>
    </message>
    <message>
      <source>A shape has no name yet</source>
      <translation>Eine Form hat noch keinen Namen</translation>
    </message>
    <message>
      <source>A sheet has {most} of part {part}</source>
      <translation>Auf einer Platte liegen {most} von Teil {part}</translation>
    </message>
    <message>
      <source>A sheet has {most} of these</source>
      <translation>Auf einer Platte liegen {most} davon</translation>
    </message>
    <message>
      <source>A sheet is on the bed of {router}</source>
      <translation>Auf dem Bett von {router} liegt eine Platte</translation>
    </message>
    <message>
      <source>A sheet is spoiled while it lies on the bed.</source>
      <translation>Ausschuss wird gemeldet, solange die Platte auf dem Tisch liegt.</translation>
    </message>
    <message>
      <source>A sheet of it is on the bed</source>
      <translation>Eine Platte davon liegt auf dem Tisch</translation>
    </message>
    <message>
      <source>A sheet with {part} is asked for</source>
      <translation>Eine Platte mit {part} ist erbeten</translation>
    </message>
    <message>
      <source>A skin of {skin} mm holds this piece.</source>
      <translation>Eine Haut von {skin} mm hält dieses Stück.</translation>
    </message>
    <message>
      <source>A stop ends by its checks: tick them, then “The stop is over”.</source>
      <translation>Ein Halt endet mit seinen Prüfungen: hake sie ab, dann „Der Halt ist vorbei“.</translation>
    </message>
    <message>
      <source>A supervisor approved that</source>
      <translation>Eine Aufsicht hat das freigegeben</translation>
    </message>
    <message>
      <source>A supervisor lets the batch go on: “More”, then “Let it go on”.</source>
      <translation>Eine Aufsicht gibt das Los frei: „Mehr“, dann „Freigeben“.</translation>
    </message>
    <message>
      <source>A supervisor may overrule, with a reason</source>
      <translation>Die Aufsicht darf es mit Grund zulassen</translation>
    </message>
    <message>
      <source>A supervisor passes it</source>
      <translation>Aufsicht lässt es gelten</translation>
    </message>
    <message>
      <source>A supervisor settles it with badge, PIN and a reason.</source>
      <translation>Die Aufsicht regelt es mit Ausweis, PIN und einem Grund.</translation>
    </message>
    <message>
      <source>A supervisor settles it: Needs a look.</source>
      <translation>Eine Aufsicht klärt es: „Bitte ansehen“.</translation>
    </message>
    <message>
      <source>A supervisor with a PIN</source>
      <translation>Eine Aufsicht mit PIN</translation>
    </message>
    <message>
      <source>A supervisor's badge, or put it down.</source>
      <translation>Ausweis der Aufsicht scannen oder weglegen.</translation>
    </message>
    <message>
      <source>A way into or out of this contour cuts into another part.</source>
      <translation>Ein Weg in diesen Umriss oder aus ihm schneidet in ein anderes Teil.</translation>
    </message>
    <message>
      <source>A way into or out of this outline cuts {long} mm into its own piece.</source>
      <translation>Ein Weg in diesen Umriss hinein oder aus ihm heraus schneidet {long} mm in das eigene Stück.</translation>
    </message>
    <message>
      <source>A {size} mm bit is needed</source>
      <translation>Es braucht einen Fräser mit {size} mm</translation>
    </message>
    <message>
      <source>A, B and C turn an axis; they are left out.</source>
      <translation>A, B und C drehen eine Achse; sie bleiben weg.</translation>
    </message>
    <message>
      <source>A4</source>
      <translation>A4</translation>
    </message>
    <message>
      <source>A5</source>
      <translation>A5</translation>
    </message>
    <message>
      <source>About {minutes} min on this router. Bring the next sheet.</source>
      <translation>Etwa {minutes} min auf dieser Fräse. Nächste Platte holen.</translation>
    </message>
    <message>
      <source>About {minutes} min on this router. It is the last sheet.</source>
      <translation>Etwa {minutes} min auf dieser Fräse. Es ist die letzte Platte.</translation>
    </message>
    <message>
      <source>Above the sheet</source>
      <translation>Über der Platte</translation>
    </message>
    <message>
      <source>Add the next one, or close the list.</source>
      <translation>Nächstes dazu oder Liste schließen.</translation>
    </message>
    <message>
      <source>Add the next one.</source>
      <translation>Nächstes dazu.</translation>
    </message>
    <message>
      <source>Added a sheet</source>
      <translation>Dazu je Platte</translation>
    </message>
    <message>
      <source>After this last sheet</source>
      <translation>Nach dieser letzten Platte</translation>
    </message>
    <message>
      <source>After this sheet: first-off</source>
      <translation>Nach dieser Platte: Erstteil</translation>
    </message>
    <message>
      <source>After this sheet: first-off.</source>
      <translation>Nach dieser Platte: Erstteil prüfen.</translation>
    </message>
    <message>
      <source>Against approved revision {letter}</source>
      <translation>Gegen freigegebene Revision {letter}</translation>
    </message>
    <message>
      <source>Against the bit's rotation, guard on; never between bit and fence.</source>
      <translation>Gegen die Drehung des Fräsers, Schutz dran; nie zwischen Fräser und Anschlag.</translation>
    </message>
    <message>
      <source>Against the master</source>
      <translation>Gegen das Muster</translation>
    </message>
    <message>
      <source>Against the master: one in {n}</source>
      <translation>Mit dem Muster: eins von {n}</translation>
    </message>
    <message>
      <source>Agrees with the master</source>
      <translation>Stimmt mit dem Muster</translation>
    </message>
    <message>
      <source>All bits good.</source>
      <translation>Alle Fräser gut.</translation>
    </message>
    <message>
      <source>All cards</source>
      <translation>Alle Karten</translation>
    </message>
    <message>
      <source>All cuts</source>
      <translation>Alle Schnitte</translation>
    </message>
    <message>
      <source>All is ordered</source>
      <translation>Alles ist bestellt</translation>
    </message>
    <message>
      <source>All is well.</source>
      <translation>Alles in Ordnung.</translation>
    </message>
    <message>
      <source>All like it</source>
      <translation>Alle solchen</translation>
    </message>
    <message>
      <source>All like it: {n}</source>
      <translation>Alle solchen: {n}</translation>
    </message>
    <message>
      <source>All lists</source>
      <translation>Alle Listen</translation>
    </message>
    <message>
      <source>All lists together</source>
      <translation>Alle Listen zusammen</translation>
    </message>
    <message>
      <source>All of batch {batch} is cut: {n} {n|piece that waits is|pieces that wait are} thrown away</source>
      <translation>Los {batch} ist ganz gefräst: {n} {n|wartendes Stück wird|wartende Stücke werden} weggeworfen</translation>
    </message>
    <message>
      <source>All of the list is ordered</source>
      <translation>Alles auf der Liste ist bestellt</translation>
    </message>
    <message>
      <source>All of them are counted already</source>
      <translation>Alle sind schon gezählt</translation>
    </message>
    <message>
      <source>All packs are scanned there again.</source>
      <translation>Alle Pakete werden dort noch einmal gescannt.</translation>
    </message>
    <message>
      <source>All parts are fetched</source>
      <translation>Alles ist geholt</translation>
    </message>
    <message>
      <source>All parts are fetched: sort them at the bench, order by order.</source>
      <translation>Alles ist geholt: am Packtisch sortieren, Auftrag für Auftrag.</translation>
    </message>
    <message>
      <source>All parts are in</source>
      <translation>Alles ist drin</translation>
    </message>
    <message>
      <source>All parts are in already</source>
      <translation>Alles ist schon drin</translation>
    </message>
    <message>
      <source>All parts are in this pack</source>
      <translation>Alles ist in diesem Paket</translation>
    </message>
    <message>
      <source>All parts are in: close the pack.</source>
      <translation>Alle Teile sind drin: Paket schließen.</translation>
    </message>
    <message>
      <source>All parts are owed</source>
      <translation>Alles steht noch aus</translation>
    </message>
    <message>
      <source>All parts are there: packing takes them.</source>
      <translation>Alle Teile sind da: das Packen nimmt sie.</translation>
    </message>
    <message>
      <source>All seen. The cart can leave.</source>
      <translation>Alle gesehen. Der Wagen kann los.</translation>
    </message>
    <message>
      <source>All seen: the cart may leave</source>
      <translation>Alle gesehen: der Wagen darf los</translation>
    </message>
    <message>
      <source>All that was done since that backup will be set aside</source>
      <translation>Alles, was seit dieser Sicherung getan wurde, wird beiseitegelegt</translation>
    </message>
    <message>
      <source>All {part} are in the pack</source>
      <translation>Alle {part} sind im Paket</translation>
    </message>
    <message>
      <source>All {sheets} {sheets|sheet is|sheets are} cut</source>
      <translation>Alle {sheets} {sheets|Platte ist|Platten sind} gefräst</translation>
    </message>
    <message>
      <source>All {sheets} {sheets|sheet|sheets} of batch {batch} {sheets|is|are} cut</source>
      <translation>Alle {sheets} {sheets|Platte|Platten} von Los {batch} {sheets|ist|sind} gefräst</translation>
    </message>
    <message>
      <source>An empty database, not the shop's</source>
      <translation>Leere Datenbank, nicht die der Werkstatt</translation>
    </message>
    <message>
      <source>An entry of station {station} was left out: {why}</source>
      <translation>Ein Eintrag von Station {station} zählt nicht: {why}</translation>
    </message>
    <message>
      <source>An order</source>
      <translation>Ein Auftrag</translation>
    </message>
    <message>
      <source>An order needs a due time</source>
      <translation>Ein Auftrag braucht einen Termin</translation>
    </message>
    <message>
      <source>An order needs at least one line</source>
      <translation>Ein Auftrag braucht mindestens eine Zeile</translation>
    </message>
    <message>
      <source>An own push needs the day on which it begins</source>
      <translation>Ein eigener Anlauf braucht den Tag, an dem er beginnt</translation>
    </message>
    <message>
      <source>And then</source>
      <translation>Und danach</translation>
    </message>
    <message>
      <source>And then, and {n} more</source>
      <translation>Und danach, und {n} weitere</translation>
    </message>
    <message>
      <source>Another PC works as station {id} too</source>
      <translation>Ein anderer PC arbeitet auch als Station {id}</translation>
    </message>
    <message>
      <source>Another PC works as this station</source>
      <translation>Ein anderer PC arbeitet als diese Station</translation>
    </message>
    <message>
      <source>Another PC works as this station: nothing of this one is shared</source>
      <translation>Ein anderer PC arbeitet als diese Station: von diesem hier wird nichts geteilt</translation>
    </message>
    <message>
      <source>Another history in the shop</source>
      <translation>Anderer Verlauf in der Werkstatt</translation>
    </message>
    <message>
      <source>Another language</source>
      <translation>Andere Sprache</translation>
    </message>
    <message>
      <source>Another material.</source>
      <translation>Anderes Material.</translation>
    </message>
    <message>
      <source>Another sheet, or a supervisor's badge.</source>
      <translation>Andere Platte oder Ausweis der Aufsicht.</translation>
    </message>
    <message>
      <source>Another shop's database</source>
      <translation>Datenbank einer anderen Werkstatt</translation>
    </message>
    <message>
      <source>Another size of sheet.</source>
      <translation>Andere Plattengröße.</translation>
    </message>
    <message>
      <source>Another speed</source>
      <translation>Andere Geschwindigkeit</translation>
    </message>
    <message>
      <source>Anybody guesses that PIN</source>
      <translation>Diese PIN errät jeder</translation>
    </message>
    <message>
      <source>Approve one first.</source>
      <translation>Erst eine freigeben.</translation>
    </message>
    <message>
      <source>Approve the newest</source>
      <translation>Neueste freigeben</translation>
    </message>
    <message>
      <source>Approve this revision</source>
      <translation>Diese Revision freigeben</translation>
    </message>
    <message>
      <source>Apr</source>
      <translation>04.</translation>
    </message>
    <message>
      <source>Are some there? Count them after this pack.</source>
      <translation>Sind welche da? Nach diesem Paket zählen.</translation>
    </message>
    <message>
      <source>Arrows: where the tabs were.</source>
      <translation>Pfeile: wo die Stege waren.</translation>
    </message>
    <message>
      <source>As it comes off</source>
      <translation>Wie es herauskommt</translation>
    </message>
    <message>
      <source>As it is cut now</source>
      <translation>Wie es jetzt geschnitten wird</translation>
    </message>
    <message>
      <source>As proposed</source>
      <translation>Wie vorgeschlagen</translation>
    </message>
    <message>
      <source>As the text shows</source>
      <translation>Wie der Text es zeigt</translation>
    </message>
    <message>
      <source>Ask for a sheet</source>
      <translation>Platte erbitten</translation>
    </message>
    <message>
      <source>Ask the safety lead.</source>
      <translation>Frag die Sicherheitsfachkraft.</translation>
    </message>
    <message>
      <source>Ask the supervisor for a badge.</source>
      <translation>Bei der Aufsicht einen Ausweis holen.</translation>
    </message>
    <message>
      <source>Asking the shop: {what}</source>
      <translation>Die Werkstatt wird gefragt: {what}</translation>
    </message>
    <message>
      <source>At most {most} of them {most|is|are} left</source>
      <translation>Höchstens {most} davon {most|ist|sind} übrig</translation>
    </message>
    <message>
      <source>At popping</source>
      <translation>Beim Ausbrechen</translation>
    </message>
    <message>
      <source>At the door</source>
      <translation>An der Tür</translation>
    </message>
    <message>
      <source>At the new PC type:  station join</source>
      <translation>Am neuen PC eintippen:  station join</translation>
    </message>
    <message>
      <source>At trimming</source>
      <translation>Beim Verputzen</translation>
    </message>
    <message>
      <source>Aug</source>
      <translation>08.</translation>
    </message>
    <message>
      <source>B {batch} {copy} · sheet {sheet} of {sheets}</source>
      <translation>B {batch} {copy} · Platte {sheet} von {sheets}</translation>
    </message>
    <message>
      <source>Back</source>
      <translation>Zurück</translation>
    </message>
    <message>
      <source>Back a list</source>
      <translation>Liste zurück</translation>
    </message>
    <message>
      <source>Back from the door</source>
      <translation>Zurück von der Tür</translation>
    </message>
    <message>
      <source>Back in the list</source>
      <translation>In der Liste zurück</translation>
    </message>
    <message>
      <source>Back on the path</source>
      <translation>Zurück auf dem Weg</translation>
    </message>
    <message>
      <source>Back to packing: scan it there, open it again, pack it anew.</source>
      <translation>Zurück zum Packen: dort scannen, wieder öffnen, neu packen.</translation>
    </message>
    <message>
      <source>Back to the first</source>
      <translation>Zurück zu den ersten</translation>
    </message>
    <message>
      <source>Back to the list</source>
      <translation>Zurück zur Liste</translation>
    </message>
    <message>
      <source>Back to the work</source>
      <translation>Zurück zur Arbeit</translation>
    </message>
    <message>
      <source>Back up</source>
      <translation>Sichern</translation>
    </message>
    <message>
      <source>Back up again in a moment.</source>
      <translation>Gleich noch einmal sichern.</translation>
    </message>
    <message>
      <source>Badges</source>
      <translation>Ausweise</translation>
    </message>
    <message>
      <source>Bag it.</source>
      <translation>Eintüten.</translation>
    </message>
    <message>
      <source>Bag set {n}</source>
      <translation>Satz {n} eintüten</translation>
    </message>
    <message>
      <source>Batch</source>
      <translation>Los</translation>
    </message>
    <message>
      <source>Batch {batch}</source>
      <translation>Los {batch}</translation>
    </message>
    <message>
      <source>Batch {batch} has no copy letter left</source>
      <translation>Los {batch} hat keinen Kopiebuchstaben mehr frei</translation>
    </message>
    <message>
      <source>Batch {batch} has no sheets of its own</source>
      <translation>Los {batch} hat keine eigenen Platten</translation>
    </message>
    <message>
      <source>Batch {batch} has none here</source>
      <translation>Los {batch} hat hier nichts</translation>
    </message>
    <message>
      <source>Batch {batch} has nothing at popping</source>
      <translation>Los {batch} hat nichts beim Ausbrechen</translation>
    </message>
    <message>
      <source>Batch {batch} has nothing at trimming</source>
      <translation>Los {batch} hat nichts beim Verputzen</translation>
    </message>
    <message>
      <source>Batch {batch} has {all} {all|sheet|sheets}, no sheet {n}</source>
      <translation>Los {batch} hat {all} {all|Platte|Platten}, keine Platte {n}</translation>
    </message>
    <message>
      <source>Batch {batch} has {sheets} {sheets|sheet|sheets} now</source>
      <translation>Los {batch} hat jetzt {sheets} {sheets|Platte|Platten}</translation>
    </message>
    <message>
      <source>Batch {batch} in hand</source>
      <translation>Los {batch} in Arbeit</translation>
    </message>
    <message>
      <source>Batch {batch} in hand: it waits</source>
      <translation>Los {batch} in der Hand: es wartet</translation>
    </message>
    <message>
      <source>Batch {batch} in it is held: packing opens it.</source>
      <translation>Los {batch} darin ist gesperrt: beim Packen wird es geöffnet.</translation>
    </message>
    <message>
      <source>Batch {batch} is being cut on {router}</source>
      <translation>Los {batch} wird auf {router} gefräst</translation>
    </message>
    <message>
      <source>Batch {batch} is cancelled</source>
      <translation>Los {batch} ist storniert</translation>
    </message>
    <message>
      <source>Batch {batch} is closed: {n} {n|piece|pieces} thrown away</source>
      <translation>Los {batch} ist geschlossen: {n} {n|Stück|Stücke} weggeworfen</translation>
    </message>
    <message>
      <source>Batch {batch} is cut, but {n} {n|sheet is|sheets are} not made anew</source>
      <translation>Los {batch} ist gefräst, aber {n} {n|Platte ist|Platten sind} nicht nachgefertigt</translation>
    </message>
    <message>
      <source>Batch {batch} is due as early already</source>
      <translation>Los {batch} ist schon so früh fällig</translation>
    </message>
    <message>
      <source>Batch {batch} is due {due}</source>
      <translation>Los {batch} ist {due} fällig</translation>
    </message>
    <message>
      <source>Batch {batch} is for order {order}</source>
      <translation>Los {batch} ist für Auftrag {order}</translation>
    </message>
    <message>
      <source>Batch {batch} is held</source>
      <translation>Los {batch} ist gesperrt</translation>
    </message>
    <message>
      <source>Batch {batch} is held already</source>
      <translation>Los {batch} ist schon gesperrt</translation>
    </message>
    <message>
      <source>Batch {batch} is held with batch {parent}</source>
      <translation>Los {batch} ist mit Los {parent} gesperrt</translation>
    </message>
    <message>
      <source>Batch {batch} is held with batch {parent}: {why}</source>
      <translation>Los {batch} ist mit Los {parent} gesperrt: {why}</translation>
    </message>
    <message>
      <source>Batch {batch} is held, and {n} of it would be gone</source>
      <translation>Los {batch} ist gesperrt, und {n} davon wären weg</translation>
    </message>
    <message>
      <source>Batch {batch} is held. Measure the same once more, or “{wrong}”.</source>
      <translation>Los {batch} ist gesperrt. Dasselbe noch einmal messen oder „{wrong}“.</translation>
    </message>
    <message>
      <source>Batch {batch} is held: a supervisor looks at what was cut after the stop.</source>
      <translation>Los {batch} ist gesperrt: Die Aufsicht sieht an, was nach dem Halt gefräst wurde.</translation>
    </message>
    <message>
      <source>Batch {batch} is held: first-off is wrong</source>
      <translation>Los {batch} ist gesperrt: Erstteil ist falsch</translation>
    </message>
    <message>
      <source>Batch {batch} is held: put them aside with it.</source>
      <translation>Los {batch} ist gesperrt: mit ihm beiseitelegen.</translation>
    </message>
    <message>
      <source>Batch {batch} is held: {why}</source>
      <translation>Los {batch} ist gesperrt: {why}</translation>
    </message>
    <message>
      <source>Batch {batch} is held: {why}. Look at what was cut then</source>
      <translation>Los {batch} ist gesperrt: {why}. Sieh an, was dabei gefräst wurde</translation>
    </message>
    <message>
      <source>Batch {batch} is in hand</source>
      <translation>Los {batch} ist in Arbeit</translation>
    </message>
    <message>
      <source>Batch {batch} is in hand, sheet {n} next</source>
      <translation>Los {batch} ist in Arbeit, als Nächstes Platte {n}</translation>
    </message>
    <message>
      <source>Batch {batch} is needed, or begun</source>
      <translation>Los {batch} wird gebraucht oder ist begonnen</translation>
    </message>
    <message>
      <source>Batch {batch} is not on {router}</source>
      <translation>Los {batch} ist nicht auf {router}</translation>
    </message>
    <message>
      <source>Batch {batch} is on it.</source>
      <translation>Los {batch} liegt darauf.</translation>
    </message>
    <message>
      <source>Batch {batch} is on {router} already</source>
      <translation>Los {batch} ist schon auf {router}</translation>
    </message>
    <message>
      <source>Batch {batch} is planned for {router}</source>
      <translation>Los {batch} ist für {router} geplant</translation>
    </message>
    <message>
      <source>Batch {batch} is released to {router}</source>
      <translation>Los {batch} ist für {router} freigegeben</translation>
    </message>
    <message>
      <source>Batch {batch} loaded {at} by worker {by}: next sheet, or a mistake?</source>
      <translation>Los {batch} aufgelegt {at} von Mitarbeiter {by}: nächste Platte oder ein Versehen?</translation>
    </message>
    <message>
      <source>Batch {batch} may go on</source>
      <translation>Los {batch} darf weiter</translation>
    </message>
    <message>
      <source>Batch {batch} may go on. Supervisor {by}: {why}.</source>
      <translation>Los {batch} darf weitergehen. Aufsicht {by}: {why}.</translation>
    </message>
    <message>
      <source>Batch {batch} of {file} can wait</source>
      <translation>Los {batch} von {file} kann warten</translation>
    </message>
    <message>
      <source>Batch {batch} still waits: {why}</source>
      <translation>Los {batch} wartet noch: {why}</translation>
    </message>
    <message>
      <source>Batch {batch} taken: {left} of {sheets} {sheets|sheet|sheets} to cut</source>
      <translation>Los {batch} genommen: {left} von {sheets} {sheets|Platte|Platten} zu fräsen</translation>
    </message>
    <message>
      <source>Batch {batch} waits with batch {other}: {why}</source>
      <translation>Los {batch} wartet mit Los {other}: {why}</translation>
    </message>
    <message>
      <source>Batch {batch} waits: {why}</source>
      <translation>Los {batch} wartet: {why}</translation>
    </message>
    <message>
      <source>Batch {batch}, copy {copy}: more to count</source>
      <translation>Los {batch}, Exemplar {copy}: weiter zu zählen</translation>
    </message>
    <message>
      <source>Batch {batch}, sheet {sheet}</source>
      <translation>Los {batch}, Platte {sheet}</translation>
    </message>
    <message>
      <source>Batch {batch}, sheet {sheet} is not made anew: {n} {n|piece|pieces} lost</source>
      <translation>Los {batch}, Platte {sheet} ist nicht nachgefertigt: {n} {n|Stück|Stück} verloren</translation>
    </message>
    <message>
      <source>Batch {batch}: no fresh sheets</source>
      <translation>Los {batch}: keine neuen Platten</translation>
    </message>
    <message>
      <source>Batch {batch}: no more sheets</source>
      <translation>Los {batch}: keine Platten mehr</translation>
    </message>
    <message>
      <source>Batch {batch}: {good} good passed on</source>
      <translation>Los {batch}: {good} gut weitergegeben</translation>
    </message>
    <message>
      <source>Batch {batch}: {good} good, {faults}</source>
      <translation>Los {batch}: {good} gut, {faults}</translation>
    </message>
    <message>
      <source>Batch {batch}: {told}</source>
      <translation>Los {batch}: {told}</translation>
    </message>
    <message>
      <source>Batch {batch}: {where}</source>
      <translation>Los {batch}: {where}</translation>
    </message>
    <message>
      <source>Batch {id}</source>
      <translation>Los {id}</translation>
    </message>
    <message>
      <source>Batch {old} waits in the queue.</source>
      <translation>Los {old} wartet in der Reihe.</translation>
    </message>
    <message>
      <source>Batches that could be theirs: {count}</source>
      <translation>Mögliche Lose: {count}</translation>
    </message>
    <message>
      <source>Bed is clear</source>
      <translation>Tisch ist frei</translation>
    </message>
    <message>
      <source>Before</source>
      <translation>Vorher</translation>
    </message>
    <message>
      <source>Before it runs on</source>
      <translation>Bevor sie weiterläuft</translation>
    </message>
    <message>
      <source>Before run {run} of sheet {n}</source>
      <translation>Vor Durchgang {run} von Platte {n}</translation>
    </message>
    <message>
      <source>Before sheet {n}</source>
      <translation>Vor Platte {n}</translation>
    </message>
    <message>
      <source>Before the first pack: {done} of {n} done</source>
      <translation>Vor dem ersten Paket: {done} von {n} erledigt</translation>
    </message>
    <message>
      <source>Before the first sheet</source>
      <translation>Vor der ersten Platte</translation>
    </message>
    <message>
      <source>Before the first sheet: {done} of {n} done</source>
      <translation>Vor der ersten Platte: {done} von {n} erledigt</translation>
    </message>
    <message>
      <source>Below it more is cut. Undo takes it back.</source>
      <translation>Darunter wird mehr geschnitten. Rückgängig nimmt es zurück.</translation>
    </message>
    <message>
      <source>Below the minimum of {n}: order new ones.</source>
      <translation>Unter dem Mindestbestand von {n}: neue bestellen.</translation>
    </message>
    <message>
      <source>Bench {bench}</source>
      <translation>Werkbank {bench}</translation>
    </message>
    <message>
      <source>Bit</source>
      <translation>Fräser</translation>
    </message>
    <message>
      <source>Bit broken</source>
      <translation>Fräser gebrochen</translation>
    </message>
    <message>
      <source>Bit is out of the wood</source>
      <translation>Fräser ist aus dem Holz</translation>
    </message>
    <message>
      <source>Bit is right</source>
      <translation>Fräser stimmt</translation>
    </message>
    <message>
      <source>Bit no. {bit}: {here} m on {router}</source>
      <translation>Fräser Nr. {bit}: {here} m auf {router}</translation>
    </message>
    <message>
      <source>Bit out of the wood, bed clear, sheet held, nobody at the bed.</source>
      <translation>Fräser aus dem Holz, Tisch frei, Platte gehalten, niemand am Tisch.</translation>
    </message>
    <message>
      <source>Bit size</source>
      <translation>Fräsergröße</translation>
    </message>
    <message>
      <source>Bit sizes</source>
      <translation>Fräsergrößen</translation>
    </message>
    <message>
      <source>Bit {bits} of its life.</source>
      <translation>Fräser: {bits} der Standzeit.</translation>
    </message>
    <message>
      <source>Bit {bit}</source>
      <translation>Fräser {bit}</translation>
    </message>
    <message>
      <source>Bit {bit} is broken</source>
      <translation>Fräser {bit} ist gebrochen</translation>
    </message>
    <message>
      <source>Bit {bit} is broken already</source>
      <translation>Fräser {bit} ist schon als gebrochen gemeldet</translation>
    </message>
    <message>
      <source>Bit {bit} is in already</source>
      <translation>Fräser {bit} ist schon drin</translation>
    </message>
    <message>
      <source>Bit {bit} is in {router}</source>
      <translation>Fräser {bit} ist in {router}</translation>
    </message>
    <message>
      <source>Bit {bit} is in: {words}</source>
      <translation>Fräser {bit} ist drin: {words}</translation>
    </message>
    <message>
      <source>Bit {bit} is new and in: {words}</source>
      <translation>Fräser {bit} ist neu und drin: {words}</translation>
    </message>
    <message>
      <source>Bit {bit} is new at {router}, entered by worker {by}: {words}, {size} mm</source>
      <translation>Fräser {bit} ist neu an {router}, eingetragen von Mitarbeiter {by}: {words}, {size} mm</translation>
    </message>
    <message>
      <source>Bit {bit} is new: {words}</source>
      <translation>Fräser {bit} ist neu: {words}</translation>
    </message>
    <message>
      <source>Bit {bit} is {size} mm</source>
      <translation>Fräser {bit} hat {size} mm</translation>
    </message>
    <message>
      <source>Bit {bit} is {state}</source>
      <translation>Fräser {bit} ist {state}</translation>
    </message>
    <message>
      <source>Bit {bit}: {left} m left, {need} m needed. Watch it.</source>
      <translation>Fräser {bit}: noch {left} m, gebraucht {need} m. Im Auge behalten.</translation>
    </message>
    <message>
      <source>Bit {bit}: {place}, {metres}</source>
      <translation>Fräser {bit}: {place}, {metres}</translation>
    </message>
    <message>
      <source>Bit {id}</source>
      <translation>Fräser {id}</translation>
    </message>
    <message>
      <source>Bit {number} is new.</source>
      <translation>Fräser {number} ist neu.</translation>
    </message>
    <message>
      <source>Bit {number} is no longer used.</source>
      <translation>Fräser {number} wird nicht mehr gebraucht.</translation>
    </message>
    <message>
      <source>Bit {number}: {now} mm instead of {was}.</source>
      <translation>Fräser {number}: {now} mm statt {was}.</translation>
    </message>
    <message>
      <source>Bit {n}</source>
      <translation>Fräser {n}</translation>
    </message>
    <message>
      <source>Bit {n}, {mm} mm</source>
      <translation>Fräser {n}, {mm} mm</translation>
    </message>
    <message>
      <source>Bit {other} is in {router}: this one lies in the drawer.</source>
      <translation>Fräser {other} ist in {router}: dieser liegt in der Schublade.</translation>
    </message>
    <message>
      <source>Bits</source>
      <translation>Fräser</translation>
    </message>
    <message>
      <source>Bits in the drawer</source>
      <translation>Fräser in der Schublade</translation>
    </message>
    <message>
      <source>Bits near their end</source>
      <translation>Fräser kurz vor dem Ende</translation>
    </message>
    <message>
      <source>Blocks {n} {n|order|orders}</source>
      <translation>Hält {n} {n|Auftrag|Aufträge} auf</translation>
    </message>
    <message>
      <source>Blocks {n} {n|order|orders}, {late} late</source>
      <translation>Hält {n} {n|Auftrag|Aufträge} auf, {late} verspätet</translation>
    </message>
    <message>
      <source>Blocks {n} {n|order|orders}, {late} of them late: {part}</source>
      <translation>Hält {n} {n|Auftrag|Aufträge} auf, {late} davon verspätet: {part}</translation>
    </message>
    <message>
      <source>Blocks {n} {n|order|orders}: {part}</source>
      <translation>Hält {n} {n|Auftrag|Aufträge} auf: {part}</translation>
    </message>
    <message>
      <source>Bring</source>
      <translation>Holen</translation>
    </message>
    <message>
      <source>Bring along</source>
      <translation>Mitbringen</translation>
    </message>
    <message>
      <source>Bring along what stands here.</source>
      <translation>Mitbringen, was hier steht.</translation>
    </message>
    <message>
      <source>Bring it to trimming.</source>
      <translation>Zum Verputzen bringen.</translation>
    </message>
    <message>
      <source>Bring them to trimming with the traveller.</source>
      <translation>Mit der Laufkarte zum Verputzen bringen.</translation>
    </message>
    <message>
      <source>Bring {what}</source>
      <translation>Mitbringen: {what}</translation>
    </message>
    <message>
      <source>By hand, or from a list.</source>
      <translation>Von Hand oder aus einer Liste.</translation>
    </message>
    <message>
      <source>By how much it may round a corner to keep its speed. Its control has it.</source>
      <translation>Um wie viel sie eine Ecke abrunden darf, um schnell zu bleiben. Es steht in ihrer Steuerung.</translation>
    </message>
    <message>
      <source>By the book</source>
      <translation>Laut Buch</translation>
    </message>
    <message>
      <source>By what can leave</source>
      <translation>Nach dem, was hinaus kann</translation>
    </message>
    <message>
      <source>CSV files in {folder}</source>
      <translation>CSV-Dateien in {folder}</translation>
    </message>
    <message>
      <source>Call the supervisor.</source>
      <translation>Aufsicht rufen.</translation>
    </message>
    <message>
      <source>Call the supervisor; look at bit, zero and file.</source>
      <translation>Aufsicht rufen; Fräser, Nullpunkt und Datei ansehen.</translation>
    </message>
    <message>
      <source>Can wait: queued, but nobody needs it yet</source>
      <translation>Kann warten: eingereiht, aber niemand braucht es schon</translation>
    </message>
    <message>
      <source>Can wait: queued, but nobody needs it yet; and {n} more</source>
      <translation>Kann warten: eingereiht, aber niemand braucht es schon; und {n} weitere</translation>
    </message>
    <message>
      <source>Cancel it</source>
      <translation>Stornieren</translation>
    </message>
    <message>
      <source>Cancel it and release it anew, or leave it.</source>
      <translation>Abbrechen und neu freigeben, oder lassen.</translation>
    </message>
    <message>
      <source>Cancel it, correct a count, or leave it.</source>
      <translation>Stornieren, Zahl berichtigen oder so lassen.</translation>
    </message>
    <message>
      <source>Cancel this order</source>
      <translation>Diesen Auftrag stornieren</translation>
    </message>
    <message>
      <source>Cancelled order {order} has {n} in its pack</source>
      <translation>Stornierter Auftrag {order} hat {n} im Paket</translation>
    </message>
    <message>
      <source>Cards</source>
      <translation>Karten</translation>
    </message>
    <message>
      <source>Cards for {area}</source>
      <translation>Karten für {area}</translation>
    </message>
    <message>
      <source>Cart</source>
      <translation>Wagen</translation>
    </message>
    <message>
      <source>Cart {cart}</source>
      <translation>Wagen {cart}</translation>
    </message>
    <message>
      <source>Carts</source>
      <translation>Wagen</translation>
    </message>
    <message>
      <source>Change it in the office.</source>
      <translation>Im Büro ändern.</translation>
    </message>
    <message>
      <source>Change its columns</source>
      <translation>Spalten ändern</translation>
    </message>
    <message>
      <source>Change one of them, then save.</source>
      <translation>Eines davon ändern, dann speichern.</translation>
    </message>
    <message>
      <source>Change {n} of {of}, when the file stops: scan this bit in</source>
      <translation>Wechsel {n} von {of}, wenn die Datei anhält: diesen Fräser einscannen</translation>
    </message>
    <message>
      <source>Chapters</source>
      <translation>Kapitel</translation>
    </message>
    <message>
      <source>Check it when the bed is free.</source>
      <translation>Prüfen, wenn der Tisch frei ist.</translation>
    </message>
    <message>
      <source>Check it, tick it.</source>
      <translation>Prüfen und abhaken.</translation>
    </message>
    <message>
      <source>Check the batch number.</source>
      <translation>Losnummer prüfen.</translation>
    </message>
    <message>
      <source>Check the bit: scan it or tick it.</source>
      <translation>Fräser prüfen: scannen oder abhaken.</translation>
    </message>
    <message>
      <source>Check the cut file, tick it.</source>
      <translation>Fräsdatei prüfen und abhaken.</translation>
    </message>
    <message>
      <source>Check, {unit}: {sizes}</source>
      <translation>Prüfen, {unit}: {sizes}</translation>
    </message>
    <message>
      <source>Chip load {chip} mm; this shop looks for {low} to {high} mm.</source>
      <translation>Spandicke {chip} mm; diese Werkstatt will {low} bis {high} mm.</translation>
    </message>
    <message>
      <source>Choose a field and type.</source>
      <translation>Feld wählen und tippen.</translation>
    </message>
    <message>
      <source>Choose a field first.</source>
      <translation>Erst ein Feld wählen.</translation>
    </message>
    <message>
      <source>Choose a part first.</source>
      <translation>Erst ein Teil wählen.</translation>
    </message>
    <message>
      <source>Choose a router.</source>
      <translation>Eine Fräse wählen.</translation>
    </message>
    <message>
      <source>Choose a row.</source>
      <translation>Eine Zeile wählen.</translation>
    </message>
    <message>
      <source>Choose a size that is shown.</source>
      <translation>Wähle ein Maß, das zu sehen ist.</translation>
    </message>
    <message>
      <source>Choose another router.</source>
      <translation>Andere Fräse wählen.</translation>
    </message>
    <message>
      <source>Choose another, or none.</source>
      <translation>Andere wählen oder keine.</translation>
    </message>
    <message>
      <source>Choose another.</source>
      <translation>Andere wählen.</translation>
    </message>
    <message>
      <source>Choose how it is settled.</source>
      <translation>Wählen, wie es geklärt wird.</translation>
    </message>
    <message>
      <source>Choose its material, or another file.</source>
      <translation>Material wählen oder andere Datei.</translation>
    </message>
    <message>
      <source>Choose “{office}”, then drop it again.</source>
      <translation>„{office}“ wählen, dann noch einmal ablegen.</translation>
    </message>
    <message>
      <source>Claim an order first.</source>
      <translation>Erst einen Auftrag nehmen.</translation>
    </message>
    <message>
      <source>Clear the number</source>
      <translation>Zahl löschen</translation>
    </message>
    <message>
      <source>Close</source>
      <translation>Schließen</translation>
    </message>
    <message>
      <source>Close it again.</source>
      <translation>Schließ es noch einmal.</translation>
    </message>
    <message>
      <source>Close it again: another mailer is looked for.</source>
      <translation>Noch einmal schließen: eine andere Tasche wird gesucht.</translation>
    </message>
    <message>
      <source>Close it as owed</source>
      <translation>Als offen schließen</translation>
    </message>
    <message>
      <source>Close it as owed.</source>
      <translation>Als offen schließen.</translation>
    </message>
    <message>
      <source>Close it; or first put back what goes in the other pack.</source>
      <translation>Schließ es; oder leg zuerst zurück, was ins andere Paket kommt.</translation>
    </message>
    <message>
      <source>Close pack {n}</source>
      <translation>Paket {n} schließen</translation>
    </message>
    <message>
      <source>Close pack {n} of it first.</source>
      <translation>Schließ zuerst Paket {n} davon.</translation>
    </message>
    <message>
      <source>Close set {n} of {all}</source>
      <translation>Satz {n} von {all} schließen</translation>
    </message>
    <message>
      <source>Close that first, then open this one.</source>
      <translation>Erst dieses schließen, dann das andere öffnen.</translation>
    </message>
    <message>
      <source>Close the pack</source>
      <translation>Paket schließen</translation>
    </message>
    <message>
      <source>Close the pack in hand, or scan another order.</source>
      <translation>Das Paket in der Hand schließen, oder einen anderen Auftrag scannen.</translation>
    </message>
    <message>
      <source>Close the pack.</source>
      <translation>Paket schließen.</translation>
    </message>
    <message>
      <source>Close the station now, and open it again.</source>
      <translation>Schließ die Station jetzt und öffne sie wieder.</translation>
    </message>
    <message>
      <source>Close this window and open the station again.</source>
      <translation>Schließ dieses Fenster und öffne die Station wieder.</translation>
    </message>
    <message>
      <source>Close this window.</source>
      <translation>Dieses Fenster schließen.</translation>
    </message>
    <message>
      <source>Close: held pieces in it</source>
      <translation>Schließen: gesperrte Teile darin</translation>
    </message>
    <message>
      <source>Close: {n} to go</source>
      <translation>Schließen: noch {n}</translation>
    </message>
    <message>
      <source>Closed last</source>
      <translation>Zuletzt geschlossen</translation>
    </message>
    <message>
      <source>Closer</source>
      <translation>Näher</translation>
    </message>
    <message>
      <source>Closing the pack asks why.</source>
      <translation>Beim Schließen des Pakets wird nach dem Grund gefragt.</translation>
    </message>
    <message>
      <source>Comes next</source>
      <translation>Kommt als Nächstes</translation>
    </message>
    <message>
      <source>Coming: {where}.</source>
      <translation>Es kommen: {where}.</translation>
    </message>
    <message>
      <source>Compare a piece with its master by eye: right or wrong?</source>
      <translation>Ein Teil mit dem Auge mit dem Muster vergleichen: richtig oder falsch?</translation>
    </message>
    <message>
      <source>Compare another piece, or this one anew.</source>
      <translation>Vergleiche ein anderes Teil, oder dieses noch einmal.</translation>
    </message>
    <message>
      <source>Compare it by eye: it agrees, or it is wrong.</source>
      <translation>Mit dem Auge vergleichen: Es stimmt, oder es ist falsch.</translation>
    </message>
    <message>
      <source>Compare it with its master</source>
      <translation>Mit seinem Muster vergleichen</translation>
    </message>
    <message>
      <source>Compare it with the master before sheet {sheet}.</source>
      <translation>Vor Platte {sheet} mit dem Muster vergleichen.</translation>
    </message>
    <message>
      <source>Compare with what lies there.</source>
      <translation>Mit dem vergleichen, was dort liegt.</translation>
    </message>
    <message>
      <source>Compare, then touch the right one.</source>
      <translation>Vergleichen, dann das richtige berühren.</translation>
    </message>
    <message>
      <source>Confirm it; the rest stays here.</source>
      <translation>Bestätigen; der Rest bleibt hier.</translation>
    </message>
    <message>
      <source>Copy {copy}</source>
      <translation>Exemplar {copy}</translation>
    </message>
    <message>
      <source>Copy {copy} of batch {batch} was printed twice</source>
      <translation>Kopie {copy} von Los {batch} wurde zweimal gedruckt</translation>
    </message>
    <message>
      <source>Copy {new} of batch {batch} is printed</source>
      <translation>Kopie {new} von Los {batch} ist gedruckt</translation>
    </message>
    <message>
      <source>Copy {old} is void: throw both papers away.</source>
      <translation>Kopie {old} ist ungültig: beide Papiere wegwerfen.</translation>
    </message>
    <message>
      <source>Copy {old} is void: throw it away.</source>
      <translation>Kopie {old} ist ungültig: wegwerfen.</translation>
    </message>
    <message>
      <source>Copying the history</source>
      <translation>Die Geschichte wird kopiert</translation>
    </message>
    <message>
      <source>Copying the history was stopped</source>
      <translation>Das Kopieren der Geschichte wurde angehalten</translation>
    </message>
    <message>
      <source>Correct a count</source>
      <translation>Zahl berichtigen</translation>
    </message>
    <message>
      <source>Correct count</source>
      <translation>Zahl berichtigen</translation>
    </message>
    <message>
      <source>Correct it and save again.</source>
      <translation>Berichtigen und noch einmal speichern.</translation>
    </message>
    <message>
      <source>Corrected: {counted} there, {by}</source>
      <translation>Korrigiert: {counted} dort, {by}</translation>
    </message>
    <message>
      <source>Corrected: {n} {part} there, {by}</source>
      <translation>Korrigiert: {n} {part} dort, {by}</translation>
    </message>
    <message>
      <source>Could be theirs</source>
      <translation>Könnte dazugehören</translation>
    </message>
    <message>
      <source>Count again</source>
      <translation>Nachzählen</translation>
    </message>
    <message>
      <source>Count again.</source>
      <translation>Nachzählen.</translation>
    </message>
    <message>
      <source>Count again. Scan it again if the figures on the screen are right.</source>
      <translation>Nachzählen. Noch einmal scannen, wenn die Zahlen auf dem Bildschirm stimmen.</translation>
    </message>
    <message>
      <source>Count again. Somebody may have passed some on.</source>
      <translation>Nachzählen. Vielleicht hat jemand etwas weitergegeben.</translation>
    </message>
    <message>
      <source>Count again. What never left is counted at its rack place.</source>
      <translation>Neu zählen. Was nie fort war, wird an seinem Regalplatz gezählt.</translation>
    </message>
    <message>
      <source>Count again: {who}.</source>
      <translation>Nachzählen: {who}.</translation>
    </message>
    <message>
      <source>Count by hand only if the screen is down</source>
      <translation>Von Hand zählen nur, wenn der Bildschirm ausfällt</translation>
    </message>
    <message>
      <source>Count it again.</source>
      <translation>Noch einmal zählen.</translation>
    </message>
    <message>
      <source>Count mailers, wrap and labels</source>
      <translation>Versandtaschen, Folie und Etiketten zählen</translation>
    </message>
    <message>
      <source>Count once more; then enter it again, or say that you are sure.</source>
      <translation>Zähle noch einmal; dann gib es neu ein, oder sage, dass du sicher bist.</translation>
    </message>
    <message>
      <source>Count supplies</source>
      <translation>Vorräte zählen</translation>
    </message>
    <message>
      <source>Count them, enter the number.</source>
      <translation>Zähl sie und gib die Anzahl ein.</translation>
    </message>
    <message>
      <source>Count what is wrong first.</source>
      <translation>Erst das Schlechte zählen.</translation>
    </message>
    <message>
      <source>Count what survived</source>
      <translation>Zählen, was heil ist</translation>
    </message>
    <message>
      <source>Counted {counted}, the book says {book}</source>
      <translation>{counted} gezählt, das Buch sagt {book}</translation>
    </message>
    <message>
      <source>Counted {n}: the book agrees</source>
      <translation>{n} gezählt: das Buch stimmt</translation>
    </message>
    <message>
      <source>Covers shut, eyes covered for its wavelength, fumes drawn off, never left alone.</source>
      <translation>Hauben zu, Augenschutz für die Wellenlänge, Rauch abgesaugt, nie allein lassen.</translation>
    </message>
    <message>
      <source>Cut file</source>
      <translation>Fräsdatei</translation>
    </message>
    <message>
      <source>Cut file is right</source>
      <translation>Fräsdatei stimmt</translation>
    </message>
    <message>
      <source>Cut files</source>
      <translation>Fräsdateien</translation>
    </message>
    <message>
      <source>Cut files in {folder}</source>
      <translation>Fräsdateien in {folder}</translation>
    </message>
    <message>
      <source>Cut from which material?</source>
      <translation>Aus welchem Material?</translation>
    </message>
    <message>
      <source>Cut in all</source>
      <translation>Zusammen gefräst</translation>
    </message>
    <message>
      <source>Cut it again</source>
      <translation>Noch einmal fräsen</translation>
    </message>
    <message>
      <source>Cut it again, or drop it?</source>
      <translation>Noch einmal fräsen oder streichen?</translation>
    </message>
    <message>
      <source>Cut it out and put it in place.</source>
      <translation>Ausschneiden und an seinen Platz hängen.</translation>
    </message>
    <message>
      <source>Cut its first sheet, then measure that.</source>
      <translation>Die erste Platte damit fräsen, dann diese messen.</translation>
    </message>
    <message>
      <source>Cut one more sheet</source>
      <translation>Eine Platte mehr fräsen</translation>
    </message>
    <message>
      <source>Cut one more to make good, or take the next batch.</source>
      <translation>Eine mehr als Ersatz fräsen oder das nächste Los nehmen.</translation>
    </message>
    <message>
      <source>Cut them out, put them up.</source>
      <translation>Ausschneiden und aufhängen.</translation>
    </message>
    <message>
      <source>Cut today: {n} {n|sheet|sheets}</source>
      <translation>Heute geschnitten: {n} {n|Platte|Platten}</translation>
    </message>
    <message>
      <source>Cut {batch} sooner</source>
      <translation>{batch} früher schneiden</translation>
    </message>
    <message>
      <source>Cuts across the sheet's edge.</source>
      <translation>Fräst über den Rand der Platte.</translation>
    </message>
    <message>
      <source>Cuts at {feed} mm/min; elsewhere this bit does at {usual} mm/min.</source>
      <translation>Fräst mit {feed} mm/min; sonst fräst dieser Fräser mit {usual} mm/min.</translation>
    </message>
    <message>
      <source>Cuts out</source>
      <translation>Schneidet aus</translation>
    </message>
    <message>
      <source>Cuts outside the sheet.</source>
      <translation>Fräst außerhalb der Platte.</translation>
    </message>
    <message>
      <source>Cuts while the spindle is off.</source>
      <translation>Fräst, während die Spindel steht.</translation>
    </message>
    <message>
      <source>Cuts {deep} mm deep in one pass with a bit of {wide} mm.</source>
      <translation>Fräst mit einem Fräser von {wide} mm in einem Durchgang {deep} mm tief.</translation>
    </message>
    <message>
      <source>Cuts {into} mm below the sheet; {most} mm is allowed.</source>
      <translation>Fräst {into} mm unter die Platte; erlaubt sind {most} mm.</translation>
    </message>
    <message>
      <source>Dark or light screen</source>
      <translation>Bildschirm dunkel oder hell</translation>
    </message>
    <message>
      <source>Dec</source>
      <translation>12.</translation>
    </message>
    <message>
      <source>Decimal point</source>
      <translation>Komma</translation>
    </message>
    <message>
      <source>Deepest into the spoilboard</source>
      <translation>Am tiefsten in die Opferplatte</translation>
    </message>
    <message>
      <source>Diameter of bit {n}</source>
      <translation>Durchmesser von Fräser {n}</translation>
    </message>
    <message>
      <source>Differs from the master</source>
      <translation>Weicht vom Muster ab</translation>
    </message>
    <message>
      <source>Do</source>
      <translation>Tun</translation>
    </message>
    <message>
      <source>Do it when the bed is free.</source>
      <translation>Tun, wenn der Tisch frei ist.</translation>
    </message>
    <message>
      <source>Do not cut. Copy the approved file to {folder}.</source>
      <translation>Nicht fräsen. Die freigegebene Datei nach {folder} kopieren.</translation>
    </message>
    <message>
      <source>Do not cut. Have the office move it, and approve the file again.</source>
      <translation>Nicht schneiden. Das Büro soll ihn versetzen und die Datei neu freigeben.</translation>
    </message>
    <message>
      <source>Do not scan it again: {what}. It is written down for the makers.</source>
      <translation>Nicht noch einmal scannen: {what}. Es ist für die Hersteller notiert.</translation>
    </message>
    <message>
      <source>Do something else first. The strip tells when somebody was before you.</source>
      <translation>Mach erst etwas anderes. Die Leiste sagt, wenn jemand schneller war.</translation>
    </message>
    <message>
      <source>Do the checks, then “{done}”.</source>
      <translation>Prüfungen machen, dann „{done}“.</translation>
    </message>
    <message>
      <source>Drawing the path</source>
      <translation>Der Weg wird gezeichnet</translation>
    </message>
    <message>
      <source>Drawn from the cut file.</source>
      <translation>Nach der Fräsdatei gezeichnet.</translation>
    </message>
    <message>
      <source>Drawn from the cut file. Dots are tabs, black blocks hold-downs.</source>
      <translation>Nach der Fräsdatei gezeichnet. Punkte sind Stege, schwarze Klötze Niederhalter.</translation>
    </message>
    <message>
      <source>Drawn from the cut file. Dots are tabs, rounds hold-downs; red: in the way.</source>
      <translation>Nach der Fräsdatei gezeichnet. Punkte sind Stege, Kreise Niederhalter; rot: im Weg.</translation>
    </message>
    <message>
      <source>Drawn within {mm} mm, each cut as wide as its bit, the stronger the deeper. Numbers on pieces: in which order they are cut.</source>
      <translation>Gezeichnet auf {mm} mm, jeder Schnitt so breit wie sein Fräser, je tiefer, desto kräftiger. Zahlen auf Teilen: in welcher Folge sie geschnitten werden.</translation>
    </message>
    <message>
      <source>Drop a cut file from one of its folders.</source>
      <translation>Eine Fräsdatei aus einem seiner Ordner ablegen.</translation>
    </message>
    <message>
      <source>Drop a file that is there.</source>
      <translation>Eine Datei ablegen, die es gibt.</translation>
    </message>
    <message>
      <source>Drop it</source>
      <translation>Fallen lassen</translation>
    </message>
    <message>
      <source>Drop it.</source>
      <translation>Fallen lassen.</translation>
    </message>
    <message>
      <source>Drop it; more of it is a new batch.</source>
      <translation>Streichen; mehr davon ist ein neues Los.</translation>
    </message>
    <message>
      <source>Drop one cut file at a time.</source>
      <translation>Immer nur eine Fräsdatei ablegen.</translation>
    </message>
    <message>
      <source>Drop one that ends in {endings}.</source>
      <translation>Eine ablegen, die auf {endings} endet.</translation>
    </message>
    <message>
      <source>Due a day later</source>
      <translation>Einen Tag später fällig</translation>
    </message>
    <message>
      <source>Due a day sooner</source>
      <translation>Einen Tag früher fällig</translation>
    </message>
    <message>
      <source>Due {due}</source>
      <translation>Fällig {due}</translation>
    </message>
    <message>
      <source>Due: {why}.</source>
      <translation>Fällig: {why}.</translation>
    </message>
    <message>
      <source>End the stop first, or report the sheet spoiled.</source>
      <translation>Erst den Halt beenden oder die Platte als Ausschuss melden.</translation>
    </message>
    <message>
      <source>End the stop first.</source>
      <translation>Erst den Halt beenden.</translation>
    </message>
    <message>
      <source>Engraving</source>
      <translation>Gravur</translation>
    </message>
    <message>
      <source>Enough: take {n} from rack {place}.</source>
      <translation>Genug: {n} von Regal {place} nehmen.</translation>
    </message>
    <message>
      <source>Enter 4 to 8 digits that nobody guesses.</source>
      <translation>4 bis 8 Ziffern eingeben, die niemand errät.</translation>
    </message>
    <message>
      <source>Enter a number above 0.</source>
      <translation>Eine Zahl über 0 eingeben.</translation>
    </message>
    <message>
      <source>Enter a number from 0 to {most}.</source>
      <translation>Eine Zahl von 0 bis {most} eingeben.</translation>
    </message>
    <message>
      <source>Enter a number from 1 to {gone}.</source>
      <translation>Eine Zahl von 1 bis {gone} eingeben.</translation>
    </message>
    <message>
      <source>Enter a number from 1 to {most}.</source>
      <translation>Eine Zahl von 1 bis {most} eingeben.</translation>
    </message>
    <message>
      <source>Enter a number from 1 to {n}.</source>
      <translation>Eine Zahl von 1 bis {n} eingeben.</translation>
    </message>
    <message>
      <source>Enter a number from {least} to {most}.</source>
      <translation>Eine Zahl von {least} bis {most} eingeben.</translation>
    </message>
    <message>
      <source>Enter a number, then “Sheet spoiled” again.</source>
      <translation>Eine Zahl eingeben, dann noch einmal „Platte ist Ausschuss“.</translation>
    </message>
    <message>
      <source>Enter a number.</source>
      <translation>Eine Zahl eingeben.</translation>
    </message>
    <message>
      <source>Enter a whole number.</source>
      <translation>Eine ganze Zahl eingeben.</translation>
    </message>
    <message>
      <source>Enter adds it.</source>
      <translation>Die Eingabetaste fügt es hinzu.</translation>
    </message>
    <message>
      <source>Enter another.</source>
      <translation>Eine andere eingeben.</translation>
    </message>
    <message>
      <source>Enter digits that do not follow each other.</source>
      <translation>Ziffern nehmen, die nicht aufeinander folgen.</translation>
    </message>
    <message>
      <source>Enter how many came.</source>
      <translation>Eingeben, wie viele kamen.</translation>
    </message>
    <message>
      <source>Enter how many lie there, all batches together.</source>
      <translation>Gib ein, wie viele dort liegen, alle Lose zusammen.</translation>
    </message>
    <message>
      <source>Enter it again.</source>
      <translation>Noch einmal eingeben.</translation>
    </message>
    <message>
      <source>Enter it right, or touch what it was for; then go on.</source>
      <translation>Gib es richtig ein, oder berühre, wofür es war; dann weiter.</translation>
    </message>
    <message>
      <source>Enter its {what}.</source>
      <translation>{what} eingeben.</translation>
    </message>
    <message>
      <source>Enter one in the office.</source>
      <translation>Im Büro eine eintragen.</translation>
    </message>
    <message>
      <source>Enter the mailer first.</source>
      <translation>Erst die Versandtasche eintragen.</translation>
    </message>
    <message>
      <source>Enter the material first.</source>
      <translation>Erst das Material eingeben.</translation>
    </message>
    <message>
      <source>Enter the new PIN again.</source>
      <translation>Die neue PIN noch einmal eingeben.</translation>
    </message>
    <message>
      <source>Enter the number that you counted.</source>
      <translation>Die gezählte Zahl eingeben.</translation>
    </message>
    <message>
      <source>Enter the number.</source>
      <translation>Die Zahl eingeben.</translation>
    </message>
    <message>
      <source>Enter the same PIN again.</source>
      <translation>Dieselbe PIN noch einmal eingeben.</translation>
    </message>
    <message>
      <source>Enter the sheets again.</source>
      <translation>Die Platten noch einmal eingeben.</translation>
    </message>
    <message>
      <source>Enter the {unit}, such as {example}.</source>
      <translation>Gib die {unit} ein, etwa {example}.</translation>
    </message>
    <message>
      <source>Enter what is sent as an order of its own; then settle it.</source>
      <translation>Was gesendet wird, als eigenen Auftrag eintragen; dann dies regeln.</translation>
    </message>
    <message>
      <source>Enter what the scale shows, in {unit}.</source>
      <translation>Eingeben, was die Waage zeigt, in {unit}.</translation>
    </message>
    <message>
      <source>Enter what you read in {unit}.</source>
      <translation>Den Messwert in {unit} eingeben.</translation>
    </message>
    <message>
      <source>Enter your PIN</source>
      <translation>PIN eingeben</translation>
    </message>
    <message>
      <source>Enter your PIN.</source>
      <translation>PIN eingeben.</translation>
    </message>
    <message>
      <source>Enter your PIN; or another supervisor: scan your badge.</source>
      <translation>PIN eingeben; oder eine andere Aufsicht: Ausweis scannen.</translation>
    </message>
    <message>
      <source>Enter your material first.</source>
      <translation>Erst das Material eingeben.</translation>
    </message>
    <message>
      <source>Every card of the shop is printed</source>
      <translation>Alle Karten der Werkstatt sind gedruckt</translation>
    </message>
    <message>
      <source>Every router that runs its file stands still: end a stop at loading.</source>
      <translation>Jede Fräse, die seine Datei fräst, steht still: beim Beladen einen Halt beenden.</translation>
    </message>
    <message>
      <source>Every router that runs {file} stands still</source>
      <translation>Jede Fräse, die {file} fährt, steht still</translation>
    </message>
    <message>
      <source>Every sheet was made</source>
      <translation>Jede Platte ist gemacht</translation>
    </message>
    <message>
      <source>Everything is packed.</source>
      <translation>Alles ist gepackt.</translation>
    </message>
    <message>
      <source>Example: {text}</source>
      <translation>Beispiel: {text}</translation>
    </message>
    <message>
      <source>Extraction on; a mask when it is emptied; vacuum dust up, never blow it.</source>
      <translation>Absaugung an; beim Leeren eine Maske; Staub saugen, nie blasen.</translation>
    </message>
    <message>
      <source>Eye and ear protection, dust extraction on. Guard on; feed against the bit's rotation; small parts in a holder; never between bit and fence.</source>
      <translation>Augen- und Gehörschutz, Absaugung an. Schutz dran; gegen die Drehung des Fräsers führen; kleine Teile im Halter; nie zwischen Fräser und Anschlag.</translation>
    </message>
    <message>
      <source>Eye and ear protection, dust extraction on. Guards on; spindle isolated before hands go near the bit.</source>
      <translation>Augen- und Gehörschutz, Absaugung an. Schutz dran; Spindel gesichert, bevor Hände an den Fräser kommen.</translation>
    </message>
    <message>
      <source>Eyes and ears protected, hair and sleeves tied back, gloves off, extraction on.</source>
      <translation>Augen und Ohren geschützt, Haare und Ärmel zurück, keine Handschuhe, Absaugung an.</translation>
    </message>
    <message>
      <source>Eyes and ears protected. Nobody reaches over the bed or into what moves.</source>
      <translation>Augen und Ohren geschützt. Niemand greift über den Tisch oder in Bewegtes.</translation>
    </message>
    <message>
      <source>Eyes protected. Pry and cut away from the hand; mind splinters and edges.</source>
      <translation>Augen geschützt. Von der Hand weg hebeln und schneiden; Vorsicht, Splitter und Kanten.</translation>
    </message>
    <message>
      <source>Farther</source>
      <translation>Weiter weg</translation>
    </message>
    <message>
      <source>Feb</source>
      <translation>02.</translation>
    </message>
    <message>
      <source>Fetch their parts, bag set by set. A number: so many sets.</source>
      <translation>Teile holen, Satz für Satz eintüten. Eine Zahl: so viele Sätze.</translation>
    </message>
    <message>
      <source>Files are taken in at the office</source>
      <translation>Dateien werden im Büro aufgenommen</translation>
    </message>
    <message>
      <source>Finish it or put it down first.</source>
      <translation>Erst fertig machen oder weglegen.</translation>
    </message>
    <message>
      <source>First on this router</source>
      <translation>Zuerst auf dieser Fräse</translation>
    </message>
    <message>
      <source>First run</source>
      <translation>Erster Start</translation>
    </message>
    <message>
      <source>First the start of day, then the lot of the sheet.</source>
      <translation>Erst der Tagesbeginn, dann die Charge der Platte.</translation>
    </message>
    <message>
      <source>First what stands on the screen, then the sheet.</source>
      <translation>Erst, was auf dem Bildschirm steht, dann die Platte.</translation>
    </message>
    <message>
      <source>First, before sheet {n}</source>
      <translation>Zuerst, vor Platte {n}</translation>
    </message>
    <message>
      <source>First-off</source>
      <translation>Erstteil</translation>
    </message>
    <message>
      <source>First-off against the master</source>
      <translation>Erstteil gegen das Muster</translation>
    </message>
    <message>
      <source>First-off agrees</source>
      <translation>Erstteil stimmt</translation>
    </message>
    <message>
      <source>First-off agrees on {router}</source>
      <translation>Erstteil stimmt auf {router}</translation>
    </message>
    <message>
      <source>First-off check here. Then slip and parts to popping.</source>
      <translation>Hier das Erstteil prüfen. Dann Abschnitt und Teile zum Ausbrechen.</translation>
    </message>
    <message>
      <source>First-off check, then all to popping. The batch is cut.</source>
      <translation>Erstteil prüfen, dann alles zum Ausbrechen. Das Los ist gefräst.</translation>
    </message>
    <message>
      <source>First-off is due of sheet {n}: nothing of it goes on</source>
      <translation>Erstteil von Platte {n} ist fällig: nichts davon geht weiter</translation>
    </message>
    <message>
      <source>First-off is due: batch {batch}, sheet {n}</source>
      <translation>Erstteil ist fällig: Los {batch}, Platte {n}</translation>
    </message>
    <message>
      <source>First-off is passed on {router} by worker {by}</source>
      <translation>Erstteil auf {router} von Mitarbeiter {by} zugelassen</translation>
    </message>
    <message>
      <source>First-off is wrong</source>
      <translation>Erstteil ist falsch</translation>
    </message>
    <message>
      <source>First-off is wrong on {router}</source>
      <translation>Erstteil auf {router} ist falsch</translation>
    </message>
    <message>
      <source>First-off of this file is wrong on {router}</source>
      <translation>Das Erstteil dieser Datei ist auf {router} falsch</translation>
    </message>
    <message>
      <source>First-off of {file} is wrong on {router}, same bit and zero</source>
      <translation>Erstteil von {file} ist auf {router} falsch, Fräser und Nullpunkt sind dieselben</translation>
    </message>
    <message>
      <source>First: measure one piece of sheet {n}</source>
      <translation>Zuerst: ein Teil von Platte {n} messen</translation>
    </message>
    <message>
      <source>First: measure sheet {n} of batch {batch}.</source>
      <translation>Zuerst: Platte {n} von Los {batch} messen.</translation>
    </message>
    <message>
      <source>First: {n} {part} from rack {place}, {lacking} short.</source>
      <translation>Zuerst: {n} {part} von Regal {place}, {lacking} fehlen.</translation>
    </message>
    <message>
      <source>First: {n} {part} from rack {place}.</source>
      <translation>Zuerst: {n} {part} von Regal {place}.</translation>
    </message>
    <message>
      <source>Flat 10 × 7</source>
      <translation>Flach 10 × 7</translation>
    </message>
    <message>
      <source>Flat 14 × 10</source>
      <translation>Flach 14 × 10</translation>
    </message>
    <message>
      <source>Flat 18 × 12</source>
      <translation>Flach 18 × 12</translation>
    </message>
    <message>
      <source>Flat 250 × 180</source>
      <translation>Flach 250 × 180</translation>
    </message>
    <message>
      <source>Flat 350 × 250</source>
      <translation>Flach 350 × 250</translation>
    </message>
    <message>
      <source>Flat 450 × 320</source>
      <translation>Flach 450 × 320</translation>
    </message>
    <message>
      <source>For one order? Scan or touch it</source>
      <translation>Für einen Auftrag? Scannen oder berühren</translation>
    </message>
    <message>
      <source>For order {id}, due {due}</source>
      <translation>Für Auftrag {id}, fällig {due}</translation>
    </message>
    <message>
      <source>For order {order}</source>
      <translation>Für Auftrag {order}</translation>
    </message>
    <message>
      <source>For packs ahead and own pushes</source>
      <translation>Für Vorrat gepackt und eigene Anläufe</translation>
    </message>
    <message>
      <source>For the shelf</source>
      <translation>Für den Vorrat</translation>
    </message>
    <message>
      <source>For {n} {n|order|orders}</source>
      <translation>Für {n} {n|Auftrag|Aufträge}</translation>
    </message>
    <message>
      <source>Free: {n}. Scan your work to go on.</source>
      <translation>Frei: {n}. Zum Weitermachen die Arbeit scannen.</translation>
    </message>
    <message>
      <source>Fri</source>
      <translation>Fr</translation>
    </message>
    <message>
      <source>From a later one</source>
      <translation>Aus späterem</translation>
    </message>
    <message>
      <source>From here on zero {name} counts: where it lies is not known here.</source>
      <translation>Ab hier gilt der Nullpunkt {name}: Wo er liegt, ist hier nicht bekannt.</translation>
    </message>
    <message>
      <source>From sheet to cart</source>
      <translation>Von der Platte zum Wagen</translation>
    </message>
    <message>
      <source>From the work</source>
      <translation>Aus der Arbeit</translation>
    </message>
    <message>
      <source>G28 homes the named axes</source>
      <translation>G28 fährt die genannten Achsen an ihr Ende</translation>
    </message>
    <message>
      <source>G38.2 probes; it is read as a feed move.</source>
      <translation>G38.2 tastet; es wird als Vorschubweg gelesen.</translation>
    </message>
    <message>
      <source>G87 needs I, J and K; nothing is drilled here.</source>
      <translation>G87 braucht I, J und K; hier wird nichts gebohrt.</translation>
    </message>
    <message>
      <source>G98 goes to where a series began</source>
      <translation>G98 fährt dahin, wo die Reihe begann</translation>
    </message>
    <message>
      <source>Get one of them going first.</source>
      <translation>Erst eine davon in Gang bringen.</translation>
    </message>
    <message>
      <source>Give another worker a new PIN first: that makes a supervisor. Then change this one.</source>
      <translation>Zuerst einem anderen Mitarbeiter eine neue PIN geben: Das macht ihn zur Aufsicht. Dann diesen ändern.</translation>
    </message>
    <message>
      <source>Give it another number.</source>
      <translation>Eine andere Nummer geben.</translation>
    </message>
    <message>
      <source>Give one that is in its list, or add it there first.</source>
      <translation>Einen Eintrag aus der Liste angeben oder ihn dort zuerst anlegen.</translation>
    </message>
    <message>
      <source>Go first to</source>
      <translation>Zuerst zu</translation>
    </message>
    <message>
      <source>Go on</source>
      <translation>Weiter</translation>
    </message>
    <message>
      <source>Go on here.</source>
      <translation>Hier weitermachen.</translation>
    </message>
    <message>
      <source>Go on here: nothing waits for it.</source>
      <translation>Hier weitermachen: nichts wartet darauf.</translation>
    </message>
    <message>
      <source>Go on loading it.</source>
      <translation>Weiter beladen.</translation>
    </message>
    <message>
      <source>Go on where that is meant. A mistake: leave it.</source>
      <translation>Weiter, wenn das so gemeint ist. Ein Versehen: lass es.</translation>
    </message>
    <message>
      <source>Go on with batch {batch}.</source>
      <translation>Mach mit Los {batch} weiter.</translation>
    </message>
    <message>
      <source>Go on with it later, or put them back first.</source>
      <translation>Später weitermachen oder erst zurücklegen.</translation>
    </message>
    <message>
      <source>Go on with it, or put it down. What was recorded stands.</source>
      <translation>Weitermachen oder weglegen. Was gebucht ist, bleibt.</translation>
    </message>
    <message>
      <source>Go on with sheet {sheet}.</source>
      <translation>Mit Platte {sheet} weitermachen.</translation>
    </message>
    <message>
      <source>Go on with what is yours already, or try again later.</source>
      <translation>Mach mit dem weiter, was dir schon gehört, oder versuch es später.</translation>
    </message>
    <message>
      <source>Go on with your work.</source>
      <translation>Mit der Arbeit weitermachen.</translation>
    </message>
    <message>
      <source>Go on.</source>
      <translation>Weiter.</translation>
    </message>
    <message>
      <source>Go on: it is said here once it has.</source>
      <translation>Mach weiter: Hier steht es, sobald es so weit ist.</translation>
    </message>
    <message>
      <source>Go on; close it when all is in.</source>
      <translation>Weiter; schließen, wenn alles drin ist.</translation>
    </message>
    <message>
      <source>Go to its own screen.</source>
      <translation>Zu seinem eigenen Bildschirm gehen.</translation>
    </message>
    <message>
      <source>Go to {router}</source>
      <translation>Zu {router}</translation>
    </message>
    <message>
      <source>Goes under rack {place}</source>
      <translation>Gehört unter Regal {place}</translation>
    </message>
    <message>
      <source>Hand over</source>
      <translation>Übergeben</translation>
    </message>
    <message>
      <source>Handbook</source>
      <translation>Handbuch</translation>
    </message>
    <message>
      <source>Handbook: {title}</source>
      <translation>Handbuch: {title}</translation>
    </message>
    <message>
      <source>Handover</source>
      <translation>Übergabe</translation>
    </message>
    <message>
      <source>Handover closed</source>
      <translation>Übergabe geschlossen</translation>
    </message>
    <message>
      <source>Handover, further</source>
      <translation>Übergabe, weiter</translation>
    </message>
    <message>
      <source>Hands away, spindle free: let the router go on.</source>
      <translation>Hände weg, Spindel frei: die Fräse weiterlaufen lassen.</translation>
    </message>
    <message>
      <source>Hands to a router only when its spindle is switched off and locked.</source>
      <translation>Hände erst an eine Fräse, wenn ihre Spindel ausgeschaltet und gesichert ist.</translation>
    </message>
    <message>
      <source>Has the spindle stopped? Scan again if it has.</source>
      <translation>Steht die Spindel? Wenn ja, noch einmal scannen.</translation>
    </message>
    <message>
      <source>Held as batch {batch} is: put them aside with their own traveller.</source>
      <translation>Gesperrt wie Los {batch}: mit eigener Laufkarte beiseitelegen.</translation>
    </message>
    <message>
      <source>Held down, bed vacuumed</source>
      <translation>Niedergehalten, Tisch gesaugt</translation>
    </message>
    <message>
      <source>Held pieces are in it</source>
      <translation>Gesperrte Teile liegen darin</translation>
    </message>
    <message>
      <source>Held: {why}. A supervisor lets it go on.</source>
      <translation>Gesperrt: {why}. Eine Aufsicht gibt es frei.</translation>
    </message>
    <message>
      <source>Help at trimming.</source>
      <translation>Beim Verputzen helfen.</translation>
    </message>
    <message>
      <source>Here again: {area}.</source>
      <translation>Hier ist wieder: {area}.</translation>
    </message>
    <message>
      <source>Here now: {area}</source>
      <translation>Hier jetzt: {area}</translation>
    </message>
    <message>
      <source>Here: {parts}.</source>
      <translation>Hier: {parts}.</translation>
    </message>
    <message>
      <source>Hold a batch</source>
      <translation>Ein Los sperren</translation>
    </message>
    <message>
      <source>Hold the batch instead: under “More”.</source>
      <translation>Stattdessen das Los sperren: unter „Mehr“.</translation>
    </message>
    <message>
      <source>Hold this batch</source>
      <translation>Dieses Los sperren</translation>
    </message>
    <message>
      <source>Hold-down {n}</source>
      <translation>Niederhalter {n}</translation>
    </message>
    <message>
      <source>Hold-down {n} is moved</source>
      <translation>Niederhalter {n} ist versetzt</translation>
    </message>
    <message>
      <source>Hold-down {n} is taken away</source>
      <translation>Niederhalter {n} ist weggenommen</translation>
    </message>
    <message>
      <source>Hold-down {n} stands there</source>
      <translation>Niederhalter {n} steht dort</translation>
    </message>
    <message>
      <source>Hold-down, bed vacuumed</source>
      <translation>Niederhalter, Tisch gesaugt</translation>
    </message>
    <message>
      <source>Hold-downs</source>
      <translation>Niederhalter</translation>
    </message>
    <message>
      <source>Holes at another place.</source>
      <translation>Löcher an anderer Stelle.</translation>
    </message>
    <message>
      <source>Holes of another size.</source>
      <translation>Löcher von anderer Größe.</translation>
    </message>
    <message>
      <source>How deep may a cut go into the spoilboard?</source>
      <translation>Wie tief darf ein Schnitt in die Opferplatte gehen?</translation>
    </message>
    <message>
      <source>How fast it moves above the sheet. Its control has it.</source>
      <translation>Wie schnell sie sich über der Platte bewegt. Es steht in ihrer Steuerung.</translation>
    </message>
    <message>
      <source>How is it settled?</source>
      <translation>Wie wird es geklärt?</translation>
    </message>
    <message>
      <source>How it is read</source>
      <translation>Wie er gelesen wird</translation>
    </message>
    <message>
      <source>How long one change of the bit takes.</source>
      <translation>Wie lange ein Fräserwechsel dauert.</translation>
    </message>
    <message>
      <source>How many are good now?</source>
      <translation>Wie viele sind jetzt gut?</translation>
    </message>
    <message>
      <source>How many are really there?</source>
      <translation>Wie viele sind wirklich da?</translation>
    </message>
    <message>
      <source>How many are split off?</source>
      <translation>Wie viele werden abgetrennt?</translation>
    </message>
    <message>
      <source>How many are there: {name}?</source>
      <translation>Wie viele sind da: {name}?</translation>
    </message>
    <message>
      <source>How many are there?</source>
      <translation>Wie viele sind da?</translation>
    </message>
    <message>
      <source>How many are whole?</source>
      <translation>Wie viele sind heil?</translation>
    </message>
    <message>
      <source>How many came back?</source>
      <translation>Wie viele kamen zurück?</translation>
    </message>
    <message>
      <source>How many did you count?</source>
      <translation>Wie viele hast du gezählt?</translation>
    </message>
    <message>
      <source>How many mailers came?</source>
      <translation>Wie viele Versandtaschen kamen?</translation>
    </message>
    <message>
      <source>How many of them are whole?</source>
      <translation>Wie viele davon sind heil?</translation>
    </message>
    <message>
      <source>How many of what?</source>
      <translation>Wie viele wovon?</translation>
    </message>
    <message>
      <source>How many of which part?</source>
      <translation>Wie viele von welchem Teil?</translation>
    </message>
    <message>
      <source>How many sheets came?</source>
      <translation>Wie viele Platten kamen?</translation>
    </message>
    <message>
      <source>How many sheets?</source>
      <translation>Wie viele Platten?</translation>
    </message>
    <message>
      <source>How many were found?</source>
      <translation>Wie viele wurden gefunden?</translation>
    </message>
    <message>
      <source>How many {part} are good now?</source>
      <translation>Wie viele {part} sind jetzt gut?</translation>
    </message>
    <message>
      <source>How many {part} are really in rack {place}?</source>
      <translation>Wie viele {part} liegen wirklich in Regal {place}?</translation>
    </message>
    <message>
      <source>How many {part} are really there?</source>
      <translation>Wie viele {part} sind wirklich da?</translation>
    </message>
    <message>
      <source>How many {unit}?</source>
      <translation>Wie viele {unit}?</translation>
    </message>
    <message>
      <source>How many, spoiled ones too? Trimming sorts them.</source>
      <translation>Wie viele, auch die verdorbenen? Das Verputzen sortiert.</translation>
    </message>
    <message>
      <source>How many?</source>
      <translation>Wie viele?</translation>
    </message>
    <message>
      <source>How quickly it gains speed along the bed. Its control has it.</source>
      <translation>Wie schnell sie entlang des Tischs beschleunigt. Es steht in ihrer Steuerung.</translation>
    </message>
    <message>
      <source>How quickly it gains speed up and down. Its control has it.</source>
      <translation>Wie schnell sie auf und ab beschleunigt. Es steht in ihrer Steuerung.</translation>
    </message>
    <message>
      <source>How thick is the sheet?</source>
      <translation>Wie dick ist die Platte?</translation>
    </message>
    <message>
      <source>How thick the sheet is does not stand in this file: give it.</source>
      <translation>Wie dick die Platte ist, steht nicht in der Datei: bitte angeben.</translation>
    </message>
    <message>
      <source>How wide is bit {n}? The file does not say</source>
      <translation>Wie breit ist Fräser {n}? Die Datei sagt es nicht</translation>
    </message>
    <message>
      <source>I have read it</source>
      <translation>Gelesen</translation>
    </message>
    <message>
      <source>If you do this</source>
      <translation>Wenn du das tust</translation>
    </message>
    <message>
      <source>In a holder or against the starting pin.</source>
      <translation>Im Halter oder am Anlaufstift.</translation>
    </message>
    <message>
      <source>In hand: {parts}.</source>
      <translation>In der Hand: {parts}.</translation>
    </message>
    <message>
      <source>In no column</source>
      <translation>In keiner Spalte</translation>
    </message>
    <message>
      <source>In the store</source>
      <translation>Im Lager</translation>
    </message>
    <message>
      <source>Inches</source>
      <translation>Zoll</translation>
    </message>
    <message>
      <source>Is nobody at the bed?</source>
      <translation>Ist niemand am Tisch?</translation>
    </message>
    <message>
      <source>Is the sheet in hand of it? Then go on; else scan its lot.</source>
      <translation>Ist die Platte in der Hand aus ihr? Dann weiter; sonst ihre Charge scannen.</translation>
    </message>
    <message>
      <source>Is the spoilboard of {router} cut flat?</source>
      <translation>Ist die Opferplatte von {router} abgeplant?</translation>
    </message>
    <message>
      <source>It agrees with its master</source>
      <translation>Es stimmt mit seinem Muster überein</translation>
    </message>
    <message>
      <source>It alone</source>
      <translation>Nur dieses</translation>
    </message>
    <message>
      <source>It alone is settled</source>
      <translation>Nur dieses wird erledigt</translation>
    </message>
    <message>
      <source>It begins to cut {high} mm above a sheet of {thick} mm. Is it for another one?</source>
      <translation>Sie beginnt {high} mm über einer Platte von {thick} mm zu fräsen. Gehört sie zu einer anderen?</translation>
    </message>
    <message>
      <source>It can be settled in several ways</source>
      <translation>Es lässt sich auf mehrere Arten klären</translation>
    </message>
    <message>
      <source>It could not be decided again</source>
      <translation>Es ließ sich nicht noch einmal entscheiden</translation>
    </message>
    <message>
      <source>It counts once it was read again. Esc stops it as well.</source>
      <translation>Die Kopie zählt, sobald sie noch einmal gelesen wurde. Esc hält es auch an.</translation>
    </message>
    <message>
      <source>It cuts before it calls a bit.</source>
      <translation>Sie fräst, bevor sie einen Fräser ruft.</translation>
    </message>
    <message>
      <source>It cuts {deep} mm deep into a sheet of {thick} mm. Is the file for another one?</source>
      <translation>Sie fräst {deep} mm tief in eine Platte von {thick} mm. Gehört die Datei zu einer anderen?</translation>
    </message>
    <message>
      <source>It ends before it begins</source>
      <translation>Es endet, bevor es beginnt</translation>
    </message>
    <message>
      <source>It fits none of the bits in the changer.</source>
      <translation>Passt zu keinem Fräser im Wechsler.</translation>
    </message>
    <message>
      <source>It followed from that: see Needs a look.</source>
      <translation>Es folgte daraus: siehe „Bitte ansehen“.</translation>
    </message>
    <message>
      <source>It goes with it.</source>
      <translation>Geht mit.</translation>
    </message>
    <message>
      <source>It has no place on the sheet.</source>
      <translation>Es hat keine Stelle auf der Platte.</translation>
    </message>
    <message>
      <source>It is a first-off</source>
      <translation>Sie ist ein Erstteil</translation>
    </message>
    <message>
      <source>It is cancelled: throw its traveller away.</source>
      <translation>Es ist storniert: Laufkarte wegwerfen.</translation>
    </message>
    <message>
      <source>It is clear of every cut and piece.</source>
      <translation>Er ist frei von jedem Schnitt und Teil.</translation>
    </message>
    <message>
      <source>It is empty now.</source>
      <translation>Ist jetzt leer.</translation>
    </message>
    <message>
      <source>It is free: scan a traveller.</source>
      <translation>Sie ist frei: Laufkarte scannen.</translation>
    </message>
    <message>
      <source>It is kept as PDF in {folder}: print it from there.</source>
      <translation>Es liegt als PDF in {folder}: von dort drucken.</translation>
    </message>
    <message>
      <source>It is looked at anew</source>
      <translation>Es wird neu durchgesehen</translation>
    </message>
    <message>
      <source>It is marked on the drawing.</source>
      <translation>Es ist in der Zeichnung gekennzeichnet.</translation>
    </message>
    <message>
      <source>It is no text but something else, as an archive or a picture. Choose another.</source>
      <translation>Das ist kein Text, sondern etwas anderes, etwa ein Archiv oder ein Bild. Eine andere wählen.</translation>
    </message>
    <message>
      <source>It is not used any more.</source>
      <translation>Er wird nicht mehr benutzt.</translation>
    </message>
    <message>
      <source>It is recorded, then something went wrong in the program</source>
      <translation>Es ist gebucht, danach ging im Programm etwas schief</translation>
    </message>
    <message>
      <source>It is recorded. Not printed: {papers}</source>
      <translation>Es ist gebucht. Nicht gedruckt: {papers}</translation>
    </message>
    <message>
      <source>It is recorded. Then the disk failed: look after it, then go on.</source>
      <translation>Es ist gebucht. Danach versagte die Platte: danach sehen, dann weiterarbeiten.</translation>
    </message>
    <message>
      <source>It is shown while its key is ticked.</source>
      <translation>Sie wird gezeigt, solange ihre Taste abgehakt ist.</translation>
    </message>
    <message>
      <source>It is used with work in hand.</source>
      <translation>Sie gilt mit Arbeit in der Hand.</translation>
    </message>
    <message>
      <source>It is written down for the makers. What was counted counts. Leave what is in hand, or work elsewhere.</source>
      <translation>Für die Hersteller ist es notiert. Was gezählt wurde, zählt. Ablegen, was in der Hand ist, oder woanders arbeiten.</translation>
    </message>
    <message>
      <source>It is wrong</source>
      <translation>Ist falsch</translation>
    </message>
    <message>
      <source>It lies on the rack until packing takes it.</source>
      <translation>Es liegt im Regal, bis es gepackt wird.</translation>
    </message>
    <message>
      <source>It moves by itself, to its ends: hands, hair and sleeves clear.</source>
      <translation>Sie fährt von selbst bis an die Enden: Hände, Haare, Ärmel weg.</translation>
    </message>
    <message>
      <source>It moves by itself: switched off and locked before hands go in.</source>
      <translation>Er bewegt sich von selbst: vor dem Hineingreifen aus und gesichert.</translation>
    </message>
    <message>
      <source>It needs {l} × {w} mm flat. Split it, or wrap it by hand.</source>
      <translation>Braucht {l} × {w} mm flach. Aufteilen oder von Hand einpacken.</translation>
    </message>
    <message>
      <source>It runs on router {routers}.</source>
      <translation>Läuft auf Fräse {routers}.</translation>
    </message>
    <message>
      <source>It stays as it was read before. Say it otherwise.</source>
      <translation>Er bleibt, wie er zuvor gelesen wurde. Sag es anders.</translation>
    </message>
    <message>
      <source>It stays with this station until they are put back.</source>
      <translation>Bleibt bei dieser Station, bis alles zurückgelegt ist.</translation>
    </message>
    <message>
      <source>It waits in a queue.</source>
      <translation>Sie wartet in einer Reihe.</translation>
    </message>
    <message>
      <source>It wants {parts}. Put the {part} back.</source>
      <translation>Es will {parts}. {part} zurücklegen.</translation>
    </message>
    <message>
      <source>Its card goes with it into the drawer.</source>
      <translation>Seine Karte kommt mit ihm in die Schublade.</translation>
    </message>
    <message>
      <source>Its card is printed</source>
      <translation>Die Karte ist gedruckt</translation>
    </message>
    <message>
      <source>Its diameter, and which router it is in.</source>
      <translation>Durchmesser, und in welcher Fräse er steckt.</translation>
    </message>
    <message>
      <source>Its diameter?</source>
      <translation>Sein Durchmesser?</translation>
    </message>
    <message>
      <source>Its label is void: tear it off. Count out what is spoiled, then close it.</source>
      <translation>Sein Etikett gilt nicht mehr: abreißen. Ausschuss herauszählen, dann schließen.</translation>
    </message>
    <message>
      <source>Its life, newest first</source>
      <translation>Sein Werdegang, Neuestes zuerst</translation>
    </message>
    <message>
      <source>Its name, its bed, its size.</source>
      <translation>Name, Bett und Größe.</translation>
    </message>
    <message>
      <source>Its number has letters, digits and dashes only, not {id}</source>
      <translation>Ihre Nummer hat nur Buchstaben, Ziffern und Bindestriche, nicht {id}</translation>
    </message>
    <message>
      <source>Its number stays as it is</source>
      <translation>Die Nummer bleibt, wie sie ist</translation>
    </message>
    <message>
      <source>Its order is cancelled: packing opens it and puts its parts back.</source>
      <translation>Sein Auftrag ist storniert: beim Packen öffnen und die Teile zurücklegen.</translation>
    </message>
    <message>
      <source>Its outline differs: {mm} mm² of area.</source>
      <translation>Sein Umriss ist anders: {mm} mm² Fläche.</translation>
    </message>
    <message>
      <source>Its own traveller goes with the {quantity}.</source>
      <translation>Seine eigene Laufkarte geht mit: {quantity}.</translation>
    </message>
    <message>
      <source>Its pack must be opened and put back.</source>
      <translation>Das Paket muss geöffnet und zurückgelegt werden.</translation>
    </message>
    <message>
      <source>Its paper is printed as batch {batch}</source>
      <translation>Sein Papier ist als Los {batch} gedruckt</translation>
    </message>
    <message>
      <source>Its passes begin {high} mm above a sheet of {thick} mm. Is it for another one?</source>
      <translation>Ihre Durchgänge beginnen {high} mm über einer Platte von {thick} mm. Gehört sie zu einer anderen?</translation>
    </message>
    <message>
      <source>Its pieces have gone on, so it cannot be taken back</source>
      <translation>Seine Teile sind schon weiter, darum geht es nicht zurück</translation>
    </message>
    <message>
      <source>Its router takes it sooner. Undo takes it back.</source>
      <translation>Seine Fräse nimmt es früher dran. Rückgängig nimmt es zurück.</translation>
    </message>
    <message>
      <source>Its traveller is printed with one more slip.</source>
      <translation>Die Laufkarte ist mit einem Abschnitt mehr gedruckt.</translation>
    </message>
    <message>
      <source>Jan</source>
      <translation>01.</translation>
    </message>
    <message>
      <source>Join cards</source>
      <translation>Beitrittskarten</translation>
    </message>
    <message>
      <source>Jul</source>
      <translation>07.</translation>
    </message>
    <message>
      <source>Jun</source>
      <translation>06.</translation>
    </message>
    <message>
      <source>Keep its bag closed, throw its card away. Then the next.</source>
      <translation>Beutel geschlossen lassen, Karte wegwerfen. Dann das Nächste.</translation>
    </message>
    <message>
      <source>Keeping the backup on this PC</source>
      <translation>Die Sicherung auf diesem PC wird gemacht</translation>
    </message>
    <message>
      <source>Kept on this PC</source>
      <translation>Auf diesem PC aufbewahrt</translation>
    </message>
    <message>
      <source>Knife away from the other hand; mind splinters.</source>
      <translation>Messer weg von der anderen Hand; Vorsicht, Splitter.</translation>
    </message>
    <message>
      <source>L must be a whole number above zero; read as 1.</source>
      <translation>L muss eine ganze Zahl über null sein; als 1 gelesen.</translation>
    </message>
    <message>
      <source>Label again</source>
      <translation>Noch ein Etikett</translation>
    </message>
    <message>
      <source>Label it, then onto the cart.</source>
      <translation>Etikett drauf, dann auf den Wagen.</translation>
    </message>
    <message>
      <source>Label it, then shelf {place}: {n} of {mark} there.</source>
      <translation>Karte daran, dann Vorratsfach {place}: {n} von {mark} dort.</translation>
    </message>
    <message>
      <source>Label it, then the shelf: {n} of {mark} there.</source>
      <translation>Karte daran, dann in den Vorrat: {n} von {mark} dort.</translation>
    </message>
    <message>
      <source>Label it. {then}</source>
      <translation>Etikett darauf. {then}</translation>
    </message>
    <message>
      <source>Label of pack {pack}: copy {n}</source>
      <translation>Etikett von Paket {pack}: Kopie {n}</translation>
    </message>
    <message>
      <source>Lacking on the rack: {parts}.</source>
      <translation>Im Regal fehlen: {parts}.</translation>
    </message>
    <message>
      <source>Lacking: {n}, and nothing is coming.</source>
      <translation>Es fehlen {n}, und nichts kommt.</translation>
    </message>
    <message>
      <source>Language</source>
      <translation>Sprache</translation>
    </message>
    <message>
      <source>Laser</source>
      <translation>Laser</translation>
    </message>
    <message>
      <source>Laser: eyes covered for its wavelength, fume drawn off, never left alone.</source>
      <translation>Laser: Augen für seine Wellenlänge geschützt, Rauch abgesaugt, nie unbeaufsichtigt.</translation>
    </message>
    <message>
      <source>Lay bit {bit} ready, {size} mm: scan it at the change.</source>
      <translation>Fräser {bit} bereitlegen, {size} mm: beim Wechsel scannen.</translation>
    </message>
    <message>
      <source>Layer {n}</source>
      <translation>Ebene {n}</translation>
    </message>
    <message>
      <source>Layers</source>
      <translation>Ebenen</translation>
    </message>
    <message>
      <source>Layers of the path</source>
      <translation>Ebenen der Bahn</translation>
    </message>
    <message>
      <source>Leave</source>
      <translation>Lassen</translation>
    </message>
    <message>
      <source>Leave it</source>
      <translation>So lassen</translation>
    </message>
    <message>
      <source>Leave it and mend the file; or go on, with a reason.</source>
      <translation>Lassen und die Datei in Ordnung bringen; oder weiter, mit einem Grund.</translation>
    </message>
    <message>
      <source>Leave it first; then undo takes the newest act back.</source>
      <translation>Erst weglegen; dann nimmt Zurücknehmen das Letzte zurück.</translation>
    </message>
    <message>
      <source>Leave it out, or let the batch go on first.</source>
      <translation>Weglassen, oder erst das Los weitergehen lassen.</translation>
    </message>
    <message>
      <source>Leave it out.</source>
      <translation>Lass es weg.</translation>
    </message>
    <message>
      <source>Leave it out: they stay where they are.</source>
      <translation>Lass es weg: sie bleiben, wo sie sind.</translation>
    </message>
    <message>
      <source>Leave it there, or take its sheet off first.</source>
      <translation>Dort lassen oder erst die Platte abnehmen.</translation>
    </message>
    <message>
      <source>Leave it, and take the next order.</source>
      <translation>Lassen und den nächsten Auftrag nehmen.</translation>
    </message>
    <message>
      <source>Leave its pack open on the shelf. Take the next.</source>
      <translation>Das Paket offen ins Fach stellen. Nächsten nehmen.</translation>
    </message>
    <message>
      <source>Leave the walk</source>
      <translation>Gang verlassen</translation>
    </message>
    <message>
      <source>Leave the walk and begin it again.</source>
      <translation>Gang verlassen und neu beginnen.</translation>
    </message>
    <message>
      <source>Leave this PC on until it is done.</source>
      <translation>Diesen PC eingeschaltet lassen, bis das fertig ist.</translation>
    </message>
    <message>
      <source>Left as it was</source>
      <translation>Es bleibt, wie es war</translation>
    </message>
    <message>
      <source>Left of its life: {n} m.</source>
      <translation>Von seiner Lebensdauer übrig: {n} m.</translation>
    </message>
    <message>
      <source>Left; nothing was changed</source>
      <translation>So gelassen; nichts wurde geändert</translation>
    </message>
    <message>
      <source>Left; nothing was counted</source>
      <translation>So gelassen; nichts wurde gezählt</translation>
    </message>
    <message>
      <source>Left; sheet {n} is not booked as spoiled</source>
      <translation>Gelassen; Platte {n} ist nicht als Ausschuss gebucht</translation>
    </message>
    <message>
      <source>Left; what came back so far is kept</source>
      <translation>So gelassen; was schon zurückkam, bleibt gebucht</translation>
    </message>
    <message>
      <source>Left; {counted} so far is kept</source>
      <translation>So gelassen; {counted} bleibt bis dahin gezählt</translation>
    </message>
    <message>
      <source>Lengths</source>
      <translation>Längen</translation>
    </message>
    <message>
      <source>Let a batch go on</source>
      <translation>Ein Los weitergehen lassen</translation>
    </message>
    <message>
      <source>Let batch {parent} go on first.</source>
      <translation>Erst Los {parent} weitergehen lassen.</translation>
    </message>
    <message>
      <source>Let it go on</source>
      <translation>Weitergehen lassen</translation>
    </message>
    <message>
      <source>Letter</source>
      <translation>Letter</translation>
    </message>
    <message>
      <source>Lift it clear, tick it, then send it home.</source>
      <translation>Abheben, bestätigen, dann referenzieren.</translation>
    </message>
    <message>
      <source>Line {line} begins subprogram {number} a second time. Take one of them out.</source>
      <translation>Zeile {line} beginnt Unterprogramm {number} zum zweiten Mal. Eines davon herausnehmen.</translation>
    </message>
    <message>
      <source>Line {line} calls a subprogram. Save the file without them.</source>
      <translation>Zeile {line} ruft ein Unterprogramm auf. Die Datei ohne solche speichern.</translation>
    </message>
    <message>
      <source>Line {line} calls subprogram {number} from within more than {most} others.</source>
      <translation>Zeile {line} ruft Unterprogramm {number} aus mehr als {most} anderen heraus auf.</translation>
    </message>
    <message>
      <source>Line {line} calls subprogram {number}, which is not in the file. Put it in.</source>
      <translation>Zeile {line} ruft Unterprogramm {number} auf, das nicht in der Datei steht. Es einfügen.</translation>
    </message>
    <message>
      <source>Line {line} calls subprogram {number}, which it stands in: that would never end.</source>
      <translation>Zeile {line} ruft Unterprogramm {number} auf, in dem sie selbst steht: Das würde nie enden.</translation>
    </message>
    <message>
      <source>Line {line} calls this bit {said}: is it to cut through the sheet?</source>
      <translation>Zeile {line} nennt diesen Fräser {said}: Soll er durch die Platte fräsen?</translation>
    </message>
    <message>
      <source>Line {line} does not say by number what it calls. Save the file without it.</source>
      <translation>Zeile {line} sagt nicht mit einer Nummer, was sie aufruft. Die Datei ohne sie speichern.</translation>
    </message>
    <message>
      <source>Line {line} goes back to another line than it came from. Save the file without it.</source>
      <translation>Zeile {line} kehrt zu einer anderen Zeile zurück, als von der sie aufgerufen wurde. Die Datei ohne sie speichern.</translation>
    </message>
    <message>
      <source>Line {line} is part of a loop or subprogram. Save the file without them.</source>
      <translation>Zeile {line} gehört zu einer Schleife oder einem Unterprogramm. Die Datei ohne solche speichern.</translation>
    </message>
    <message>
      <source>Line {line}: {what}</source>
      <translation>Zeile {line}: {what}</translation>
    </message>
    <message>
      <source>Line {n}</source>
      <translation>Zeile {n}</translation>
    </message>
    <message>
      <source>Line {n} is complete</source>
      <translation>Zeile {n} ist vollständig</translation>
    </message>
    <message>
      <source>Line {n} is taken out</source>
      <translation>Zeile {n} ist gestrichen</translation>
    </message>
    <message>
      <source>Line {n}: {value}</source>
      <translation>Zeile {n}: {value}</translation>
    </message>
    <message>
      <source>Lines between {first} and {last} begin with a slash: {runs} {runs|part|parts} where the router runs them, {skips} where it skips them.</source>
      <translation>Zeilen zwischen {first} und {last} beginnen mit einem Schrägstrich: {runs} {runs|Teil|Teile}, wenn die Fräse sie ausführt, {skips}, wenn sie sie überspringt.</translation>
    </message>
    <message>
      <source>List complete</source>
      <translation>Liste vollständig</translation>
    </message>
    <message>
      <source>List of {cart}</source>
      <translation>Liste von {cart}</translation>
    </message>
    <message>
      <source>Lists</source>
      <translation>Listen</translation>
    </message>
    <message>
      <source>Load the next sheet.</source>
      <translation>Nächste Platte auflegen.</translation>
    </message>
    <message>
      <source>Loading</source>
      <translation>Beladen</translation>
    </message>
    <message>
      <source>Loading scans it at the sheet.</source>
      <translation>Das Beladen scannt sie an der Platte.</translation>
    </message>
    <message>
      <source>Loading scans its slip first.</source>
      <translation>Beim Beladen wird erst der Abschnitt gescannt.</translation>
    </message>
    <message>
      <source>Local rules and the safety lead come first.</source>
      <translation>Eigene Regeln und die Sicherheitsfachkraft gehen vor.</translation>
    </message>
    <message>
      <source>Local rules and your safety lead come first.</source>
      <translation>Örtliche Vorschriften und eure Sicherheitsfachkraft gehen vor.</translation>
    </message>
    <message>
      <source>Lock</source>
      <translation>Zusperren</translation>
    </message>
    <message>
      <source>Lock the office</source>
      <translation>Büro zusperren</translation>
    </message>
    <message>
      <source>Long 26 × 6</source>
      <translation>Lang 26 × 6</translation>
    </message>
    <message>
      <source>Long 650 × 150</source>
      <translation>Lang 650 × 150</translation>
    </message>
    <message>
      <source>Look again</source>
      <translation>Noch einmal nachsehen</translation>
    </message>
    <message>
      <source>Look again at what to cut, or stop</source>
      <translation>Noch einmal nachsehen, was zu fräsen ist, oder anhalten</translation>
    </message>
    <message>
      <source>Look at it, tick it. Then “{over}”.</source>
      <translation>Ansehen, bestätigen. Dann „{over}“.</translation>
    </message>
    <message>
      <source>Look at its label.</source>
      <translation>Etikett ansehen.</translation>
    </message>
    <message>
      <source>Look at its paper and its lamps. {file} is kept as PDF in {folder}.</source>
      <translation>Papier und Lampen ansehen. {file} liegt als PDF in {folder}.</translation>
    </message>
    <message>
      <source>Look at spoilboard and zero before the sheet.</source>
      <translation>Vor der Platte Opferplatte und Nullpunkt ansehen.</translation>
    </message>
    <message>
      <source>Look at the card.</source>
      <translation>Karte ansehen.</translation>
    </message>
    <message>
      <source>Look at the card. The office enters what is new.</source>
      <translation>Karte ansehen. Neues trägt das Büro ein.</translation>
    </message>
    <message>
      <source>Look at the label of the pack.</source>
      <translation>Sieh auf das Etikett des Pakets.</translation>
    </message>
    <message>
      <source>Look at the paper.</source>
      <translation>Papier ansehen.</translation>
    </message>
    <message>
      <source>Look at the screen for what comes next.</source>
      <translation>Der Bildschirm sagt, was als Nächstes kommt.</translation>
    </message>
    <message>
      <source>Look at the sheet's card: is it of this lot? Then the book is put right.</source>
      <translation>Karte der Platte ansehen: gehört sie zu dieser Charge? Dann wird das Buch berichtigt.</translation>
    </message>
    <message>
      <source>Look into the program that wrote it. Sizes that come out wrong are not cut.</source>
      <translation>In dem Programm nachsehen, das ihn geschrieben hat. Maße, die falsch herauskommen, werden nicht gefräst.</translation>
    </message>
    <message>
      <source>Look it over, then approve it.</source>
      <translation>Durchsehen, dann freigeben.</translation>
    </message>
    <message>
      <source>Look it over, then take it in.</source>
      <translation>Durchsehen, dann übernehmen.</translation>
    </message>
    <message>
      <source>Look it over.</source>
      <translation>Sieh es durch.</translation>
    </message>
    <message>
      <source>Look it over: nothing of it counts yet.</source>
      <translation>Ansehen: noch zählt nichts davon.</translation>
    </message>
    <message>
      <source>Look through the pack. Close it all the same?</source>
      <translation>Paket durchsehen. Trotzdem schließen?</translation>
    </message>
    <message>
      <source>Look twice: {mark}.</source>
      <translation>Zweimal hinsehen: {mark}.</translation>
    </message>
    <message>
      <source>Look whether the file is whole.</source>
      <translation>Nachsehen, ob die Datei heil ist.</translation>
    </message>
    <message>
      <source>Look, tick it. Then “{over}”.</source>
      <translation>Hinsehen, bestätigen. Dann „{over}“.</translation>
    </message>
    <message>
      <source>Looking at orders, rack, queues and history</source>
      <translation>Aufträge, Regal, Reihen und Verlauf werden angesehen</translation>
    </message>
    <message>
      <source>Looking is stopped</source>
      <translation>Das Durchsehen ist angehalten</translation>
    </message>
    <message>
      <source>Lot</source>
      <translation>Charge</translation>
    </message>
    <message>
      <source>Lot {id}</source>
      <translation>Charge {id}</translation>
    </message>
    <message>
      <source>Lot {lot}</source>
      <translation>Charge {lot}</translation>
    </message>
    <message>
      <source>Lot {lot} had no sheet left by the book, yet one is cut: count it</source>
      <translation>Charge {lot} hatte laut Buch keine Platte mehr, doch eine wird gefräst: nachzählen</translation>
    </message>
    <message>
      <source>Lot {lot} has no sheet left by the book</source>
      <translation>Charge {lot} hat laut Buch keine Platte mehr</translation>
    </message>
    <message>
      <source>Lot {lot} is another material</source>
      <translation>Charge {lot} ist anderes Material</translation>
    </message>
    <message>
      <source>Lot {lot} is marked: {why}.</source>
      <translation>Charge {lot} ist markiert: {why}.</translation>
    </message>
    <message>
      <source>Lot {lot} is {got}</source>
      <translation>Charge {lot} ist {got}</translation>
    </message>
    <message>
      <source>Lot {lot}, batch {batch}: {wrong}; worker {by}: {why}</source>
      <translation>Charge {lot}, Los {batch}: {wrong}; Mitarbeiter {by}: {why}</translation>
    </message>
    <message>
      <source>Lot {lot}: {n} {n|sheet|sheets} in the store, {used} used</source>
      <translation>Charge {lot}: {n} {n|Platte|Platten} im Lager, {used} verbraucht</translation>
    </message>
    <message>
      <source>Lots</source>
      <translation>Chargen</translation>
    </message>
    <message>
      <source>Lots of {material}</source>
      <translation>Chargen von {material}</translation>
    </message>
    <message>
      <source>M4 turns the spindle backwards. Is there a bit in it that cuts so?</source>
      <translation>M4 dreht die Spindel rückwärts. Steckt ein Fräser darin, der so schneidet?</translation>
    </message>
    <message>
      <source>Mailer</source>
      <translation>Versandtasche</translation>
    </message>
    <message>
      <source>Mailer {mailer}: {size}</source>
      <translation>Versandtasche {mailer}: {size}</translation>
    </message>
    <message>
      <source>Mailer {name}</source>
      <translation>Versandtasche {name}</translation>
    </message>
    <message>
      <source>Mailer {name} does not close over {t} mm</source>
      <translation>Versandtasche {name} schließt nicht über {t} mm</translation>
    </message>
    <message>
      <source>Mailer {name}, the last one: order more. {label}</source>
      <translation>Versandtasche {name}, die letzte: nachbestellen. {label}</translation>
    </message>
    <message>
      <source>Mailer {name}. {label}</source>
      <translation>Versandtasche {name}. {label}</translation>
    </message>
    <message>
      <source>Mailers</source>
      <translation>Versandtaschen</translation>
    </message>
    <message>
      <source>Make a lot, save it, then “Receive sheets”.</source>
      <translation>Charge anlegen, speichern, dann „Platten annehmen“.</translation>
    </message>
    <message>
      <source>Make a new cut file.</source>
      <translation>Eine neue Fräsdatei anlegen.</translation>
    </message>
    <message>
      <source>Make it, and say which part lies there.</source>
      <translation>Anlegen, und sagen, welches Teil dort liegt.</translation>
    </message>
    <message>
      <source>Make one, save it, then “Read its file”.</source>
      <translation>Anlegen, speichern, dann „Seine Datei lesen“.</translation>
    </message>
    <message>
      <source>Manner of the router</source>
      <translation>Art der Fräse</translation>
    </message>
    <message>
      <source>Mar</source>
      <translation>03.</translation>
    </message>
    <message>
      <source>Material</source>
      <translation>Material</translation>
    </message>
    <message>
      <source>Materials</source>
      <translation>Materialien</translation>
    </message>
    <message>
      <source>May</source>
      <translation>05.</translation>
    </message>
    <message>
      <source>Measure again: every reading is kept.</source>
      <translation>Miss noch einmal: jede Messung bleibt.</translation>
    </message>
    <message>
      <source>Measure it across its edges, enter {unit}.</source>
      <translation>Über die Schneiden messen, {unit} eingeben.</translation>
    </message>
    <message>
      <source>Measure it again, or a supervisor's badge.</source>
      <translation>Noch einmal messen, oder Ausweis der Aufsicht.</translation>
    </message>
    <message>
      <source>Measure it again, or choose the size that it is.</source>
      <translation>Miss noch einmal, oder wähle das Maß, das es ist.</translation>
    </message>
    <message>
      <source>Measure it again; or put another bit in, set zero anew; or a supervisor passes it.</source>
      <translation>Noch einmal messen; oder einen anderen Fräser einsetzen, Nullpunkt neu setzen; oder die Aufsicht lässt es zu.</translation>
    </message>
    <message>
      <source>Measure it once more. Till then nothing of it goes on.</source>
      <translation>Miss noch einmal. Bis dahin geht nichts davon weiter.</translation>
    </message>
    <message>
      <source>Measure it once more. Till then put aside too: {where}.</source>
      <translation>Noch einmal messen. Bis dahin auch beiseitelegen: {where}.</translation>
    </message>
    <message>
      <source>Measure it, enter the reading in {unit}.</source>
      <translation>Messen, Wert in {unit} eingeben.</translation>
    </message>
    <message>
      <source>Measure it, enter the {unit}.</source>
      <translation>Miss es, gib die {unit} ein.</translation>
    </message>
    <message>
      <source>Measure it, enter the {unit}: about {mm}.</source>
      <translation>Messen, {unit} eingeben: etwa {mm}.</translation>
    </message>
    <message>
      <source>Measure one of its pieces here, or at {router}.</source>
      <translation>Eines seiner Teile hier messen, oder an {router}.</translation>
    </message>
    <message>
      <source>Measure one piece: {part}, {size}.</source>
      <translation>Ein Teil messen: {part}, {size}.</translation>
    </message>
    <message>
      <source>Measure the sheet, enter {unit}.</source>
      <translation>Platte messen, {unit} eingeben.</translation>
    </message>
    <message>
      <source>Measure {size}, enter the {unit}</source>
      <translation>Miss {size}, gib die {unit} ein</translation>
    </message>
    <message>
      <source>Measure {size}.</source>
      <translation>Miss {size}.</translation>
    </message>
    <message>
      <source>Measure {size}: {limits}</source>
      <translation>Miss {size}: {limits}</translation>
    </message>
    <message>
      <source>Mend that, then back up again.</source>
      <translation>Das beheben, dann noch einmal sichern.</translation>
    </message>
    <message>
      <source>Mend the file and read it again.</source>
      <translation>Datei in Ordnung bringen und noch einmal lesen.</translation>
    </message>
    <message>
      <source>Mend the file, then read it again.</source>
      <translation>Datei in Ordnung bringen, dann noch einmal lesen.</translation>
    </message>
    <message>
      <source>Mend what is told there.</source>
      <translation>Behebe, was dort steht.</translation>
    </message>
    <message>
      <source>Millimetres</source>
      <translation>Millimeter</translation>
    </message>
    <message>
      <source>Minimums that are wrong</source>
      <translation>Mindestbestand, der nicht passt</translation>
    </message>
    <message>
      <source>Minutes</source>
      <translation>Minuten</translation>
    </message>
    <message>
      <source>Missing</source>
      <translation>Fehlt</translation>
    </message>
    <message>
      <source>Missing before the first sheet</source>
      <translation>Fehlt vor der ersten Platte</translation>
    </message>
    <message>
      <source>Missing parts found</source>
      <translation>Fehlende Teile gefunden</translation>
    </message>
    <message>
      <source>Mon</source>
      <translation>Mo</translation>
    </message>
    <message>
      <source>More</source>
      <translation>Mehr</translation>
    </message>
    <message>
      <source>More of it is a new batch: ask the office.</source>
      <translation>Mehr davon ist ein neues Los: das Büro fragen.</translation>
    </message>
    <message>
      <source>More of the list</source>
      <translation>Mehr von der Liste</translation>
    </message>
    <message>
      <source>More reasons</source>
      <translation>Weitere Gründe</translation>
    </message>
    <message>
      <source>More than {most} M words stand here; all are taken.</source>
      <translation>Hier stehen mehr als {most} M-Wörter; alle gelten.</translation>
    </message>
    <message>
      <source>Move one, or take one away.</source>
      <translation>Einen versetzen oder wegnehmen.</translation>
    </message>
    <message>
      <source>Name of a new part</source>
      <translation>Name eines neuen Teils</translation>
    </message>
    <message>
      <source>Name one thing that is on its way: a material, a bit size or a mailer</source>
      <translation>Eine Sache nennen, die unterwegs ist: ein Material, eine Fräsergröße oder eine Versandtasche</translation>
    </message>
    <message>
      <source>Needs a look</source>
      <translation>Bitte ansehen</translation>
    </message>
    <message>
      <source>Needs a look, and {n} more</source>
      <translation>Anzusehen, und {n} mehr</translation>
    </message>
    <message>
      <source>Needs a look: {count}, page {page} of {pages}</source>
      <translation>Anzusehen: {count}, Seite {page} von {pages}</translation>
    </message>
    <message>
      <source>Neither sheets nor mailers are open</source>
      <translation>Weder Platten noch Versandtaschen sind offen</translation>
    </message>
    <message>
      <source>Never hold parts by hand. This does not stop it.</source>
      <translation>Nie Teile mit der Hand halten. Das hier hält die Fräse nicht an.</translation>
    </message>
    <message>
      <source>New bit</source>
      <translation>Neuer Fräser</translation>
    </message>
    <message>
      <source>New ones: {n}. Look at them in the office.</source>
      <translation>Neue: {n}. Im Büro ansehen.</translation>
    </message>
    <message>
      <source>New {kind} numbers for station {id}</source>
      <translation>Neue Nummern für Station {id}: {kind}</translation>
    </message>
    <message>
      <source>Newest first</source>
      <translation>Neueste zuerst</translation>
    </message>
    <message>
      <source>Next batch</source>
      <translation>Nächstes Los</translation>
    </message>
    <message>
      <source>Next field</source>
      <translation>Nächstes Feld</translation>
    </message>
    <message>
      <source>Next in its queue: batch {batch}.</source>
      <translation>Als Nächstes in der Reihe: Los {batch}.</translation>
    </message>
    <message>
      <source>Next list</source>
      <translation>Nächste Liste</translation>
    </message>
    <message>
      <source>Next on this router</source>
      <translation>Als Nächstes auf dieser Fräse</translation>
    </message>
    <message>
      <source>Next order</source>
      <translation>Nächster Auftrag</translation>
    </message>
    <message>
      <source>Next pack.</source>
      <translation>Nächstes Paket.</translation>
    </message>
    <message>
      <source>Next page</source>
      <translation>Nächste Seite</translation>
    </message>
    <message>
      <source>Next problem</source>
      <translation>Nächster Fehler</translation>
    </message>
    <message>
      <source>Next router</source>
      <translation>Nächste Fräse</translation>
    </message>
    <message>
      <source>Next sheet: scan its own slip. Nothing was counted.</source>
      <translation>Nächste Platte: ihren eigenen Abschnitt scannen. Nichts wurde gezählt.</translation>
    </message>
    <message>
      <source>Next: batch {batch}</source>
      <translation>Als Nächstes: Los {batch}</translation>
    </message>
    <message>
      <source>Next: cut it on {router}.</source>
      <translation>Als Nächstes: fräsen auf {router}.</translation>
    </message>
    <message>
      <source>Next: it leaves with its cart.</source>
      <translation>Als Nächstes: Es geht mit seinem Wagen.</translation>
    </message>
    <message>
      <source>Next: it leaves with its packs.</source>
      <translation>Weiter: Es geht mit seinen Paketen.</translation>
    </message>
    <message>
      <source>Next: onto a cart.</source>
      <translation>Als Nächstes: auf einen Wagen.</translation>
    </message>
    <message>
      <source>Next: packing takes it for an order.</source>
      <translation>Als Nächstes: Das Packen nimmt es für einen Auftrag.</translation>
    </message>
    <message>
      <source>Next: pop its sheets.</source>
      <translation>Als Nächstes: seine Platten ausbrechen.</translation>
    </message>
    <message>
      <source>Next: trim it.</source>
      <translation>Als Nächstes: verputzen.</translation>
    </message>
    <message>
      <source>Next: {field}. Type it, or save.</source>
      <translation>Weiter: {field}. Eingeben oder speichern.</translation>
    </message>
    <message>
      <source>Next: {n} {part} from rack {place}, {lacking} short.</source>
      <translation>Als Nächstes: {n} {part} von Regal {place}, {lacking} fehlen.</translation>
    </message>
    <message>
      <source>Next: {n} {part} from rack {place}.</source>
      <translation>Als Nächstes: {n} {part} von Regal {place}.</translation>
    </message>
    <message>
      <source>Next: {n} {part} from rack {place}; {held} there are held, leave them.</source>
      <translation>Weiter: {n} {part} aus Regal {place}; {held} dort sind gesperrt, lass sie liegen.</translation>
    </message>
    <message>
      <source>Next: {n} × {part}</source>
      <translation>Als Nächstes: {n} × {part}</translation>
    </message>
    <message>
      <source>Next: {part}, {size}.</source>
      <translation>Als Nächstes: {part}, {size}.</translation>
    </message>
    <message>
      <source>Next: {size}.</source>
      <translation>Als Nächstes: {size}.</translation>
    </message>
    <message>
      <source>Next: {step}</source>
      <translation>Als Nächstes: {step}</translation>
    </message>
    <message>
      <source>No CSV file lies there</source>
      <translation>Dort liegt keine CSV-Datei</translation>
    </message>
    <message>
      <source>No G0 to G3 stands before; read as a feed move.</source>
      <translation>Davor steht kein G0 bis G3; als Vorschubweg gelesen.</translation>
    </message>
    <message>
      <source>No approved cut file makes</source>
      <translation>Keine freigegebene Fräsdatei macht</translation>
    </message>
    <message>
      <source>No approved cut file makes it: approve one in the office.</source>
      <translation>Keine freigegebene Fräsdatei macht es: im Büro eine freigeben.</translation>
    </message>
    <message>
      <source>No approved revision of that cut file</source>
      <translation>Keine freigegebene Revision dieser Fräsdatei</translation>
    </message>
    <message>
      <source>No backup is kept on this PC yet</source>
      <translation>Auf diesem PC liegt noch keine Sicherung</translation>
    </message>
    <message>
      <source>No batch in hand yet</source>
      <translation>Noch kein Los in Arbeit</translation>
    </message>
    <message>
      <source>No batch is chosen</source>
      <translation>Kein Los ist gewählt</translation>
    </message>
    <message>
      <source>No batch is under way.</source>
      <translation>Kein Los ist unterwegs.</translation>
    </message>
    <message>
      <source>No batch was released yet.</source>
      <translation>Noch kein Los ist freigegeben.</translation>
    </message>
    <message>
      <source>No batch with {part} is under way</source>
      <translation>Kein Los mit {part} ist unterwegs</translation>
    </message>
    <message>
      <source>No bit is in the spindle</source>
      <translation>Kein Fräser in der Spindel</translation>
    </message>
    <message>
      <source>No bit of that size in the drawer</source>
      <translation>Kein Fräser dieser Größe in der Schublade</translation>
    </message>
    <message>
      <source>No column is said yet</source>
      <translation>Noch ist keine Spalte genannt</translation>
    </message>
    <message>
      <source>No cut file lies there</source>
      <translation>Dort liegt keine Fräsdatei</translation>
    </message>
    <message>
      <source>No cut file makes {part}</source>
      <translation>Keine Fräsdatei macht {part}</translation>
    </message>
    <message>
      <source>No field is chosen</source>
      <translation>Kein Feld ist gewählt</translation>
    </message>
    <message>
      <source>No first sheet of {router} is known</source>
      <translation>Keine erste Platte von {router} ist bekannt</translation>
    </message>
    <message>
      <source>No first-off is due</source>
      <translation>Kein Erstteil ist fällig</translation>
    </message>
    <message>
      <source>No first-off is due on {router}</source>
      <translation>Auf {router} ist kein Erstteil fällig</translation>
    </message>
    <message>
      <source>No hold-down stands within the bit's way. Set the clamps low and look once more at the first sheet.</source>
      <translation>Kein Niederhalter steht im Weg des Fräsers. Spann niedrig, und sieh bei der ersten Platte noch einmal hin.</translation>
    </message>
    <message>
      <source>No later order has it in its pack</source>
      <translation>Kein späterer Auftrag hat es im Paket</translation>
    </message>
    <message>
      <source>No later order has so many {part} in its pack</source>
      <translation>Kein späterer Auftrag hat so viele {part} im Paket</translation>
    </message>
    <message>
      <source>No letter is left for it</source>
      <translation>Kein Buchstabe ist dafür frei</translation>
    </message>
    <message>
      <source>No line is chosen</source>
      <translation>Keine Zeile ist gewählt</translation>
    </message>
    <message>
      <source>No line of it moves the router. Choose another.</source>
      <translation>Keine Zeile darin bewegt die Fräse. Eine andere wählen.</translation>
    </message>
    <message>
      <source>No list lies there</source>
      <translation>Dort liegt keine Liste</translation>
    </message>
    <message>
      <source>No mailer is large enough</source>
      <translation>Keine Versandtasche ist groß genug</translation>
    </message>
    <message>
      <source>No material is known</source>
      <translation>Kein Material ist bekannt</translation>
    </message>
    <message>
      <source>No minimum is wrong</source>
      <translation>Kein Mindestbestand ist falsch</translation>
    </message>
    <message>
      <source>No more are under way: send it short, or put it down.</source>
      <translation>Mehr sind nicht unterwegs: unvollständig schicken oder weglegen.</translation>
    </message>
    <message>
      <source>No number is asked for now</source>
      <translation>Jetzt wird keine Zahl gefragt</translation>
    </message>
    <message>
      <source>No number yet</source>
      <translation>Noch keine Zahl</translation>
    </message>
    <message>
      <source>No open order wants its parts.</source>
      <translation>Kein offener Auftrag braucht seine Teile.</translation>
    </message>
    <message>
      <source>No order is ready that nobody packs</source>
      <translation>Kein Auftrag ist bereit, den niemand packt</translation>
    </message>
    <message>
      <source>No order list is open</source>
      <translation>Keine Bestellliste ist offen</translation>
    </message>
    <message>
      <source>No order waits for a part that is not under way</source>
      <translation>Kein Auftrag wartet auf ein Teil, das nicht unterwegs ist</translation>
    </message>
    <message>
      <source>No order waits to be packed</source>
      <translation>Kein Auftrag wartet aufs Packen</translation>
    </message>
    <message>
      <source>No other router.</source>
      <translation>Keine andere Fräse.</translation>
    </message>
    <message>
      <source>No pack is here.</source>
      <translation>Hier ist kein Paket.</translation>
    </message>
    <message>
      <source>No pack of order {order} has left</source>
      <translation>Kein Paket des Auftrags {order} ist abgegangen</translation>
    </message>
    <message>
      <source>No pack waits.</source>
      <translation>Kein Paket wartet.</translation>
    </message>
    <message>
      <source>No pack, no label. What is owed comes up when its parts are there.</source>
      <translation>Kein Paket, kein Etikett. Was geschuldet ist, kommt von selbst, wenn die Teile da sind.</translation>
    </message>
    <message>
      <source>No part is.</source>
      <translation>Kein Teil.</translation>
    </message>
    <message>
      <source>No part of this order still wants {n}</source>
      <translation>Kein Teil dieses Auftrags braucht noch {n}</translation>
    </message>
    <message>
      <source>No part was found in that file</source>
      <translation>In dieser Datei wurde kein Teil gefunden</translation>
    </message>
    <message>
      <source>No pocket of {router} asks for it yet: it lies in the drawer.</source>
      <translation>Noch verlangt ihn kein Platz von {router}: er liegt in der Schublade.</translation>
    </message>
    <message>
      <source>No pocket takes bit {bit}</source>
      <translation>Kein Platz im Wechsler nimmt Fräser {bit}</translation>
    </message>
    <message>
      <source>No printer is attached to this PC</source>
      <translation>Kein Drucker an diesem PC</translation>
    </message>
    <message>
      <source>No problem lies there</source>
      <translation>Dort liegt kein Fehler</translation>
    </message>
    <message>
      <source>No product of its order has that part any more</source>
      <translation>Kein Produkt seines Auftrags enthält das Teil noch</translation>
    </message>
    <message>
      <source>No revision of this cut file is approved</source>
      <translation>Keine Revision dieser Fräsdatei ist freigegeben</translation>
    </message>
    <message>
      <source>No router in use runs its file: enter one in the office.</source>
      <translation>Keine Fräse in Betrieb fräst seine Datei: im Büro eine eintragen.</translation>
    </message>
    <message>
      <source>No router runs it.</source>
      <translation>Keine Fräse fährt sie.</translation>
    </message>
    <message>
      <source>No screw or clamp in its way, extraction on, nobody at the bed.</source>
      <translation>Keine Schraube, kein Spanner im Weg, Absaugung an, niemand am Tisch.</translation>
    </message>
    <message>
      <source>No sheet is being cut.</source>
      <translation>Es wird keine Platte gefräst.</translation>
    </message>
    <message>
      <source>No sheet is on the bed</source>
      <translation>Keine Platte auf dem Tisch</translation>
    </message>
    <message>
      <source>No sheet of batch {batch} is on {router}</source>
      <translation>Keine Platte von Los {batch} auf {router}</translation>
    </message>
    <message>
      <source>No sheet of batch {batch} was spoiled</source>
      <translation>Keine Platte von Los {batch} war Ausschuss</translation>
    </message>
    <message>
      <source>No sheets of it are in the store.</source>
      <translation>Keine Platten davon im Lager.</translation>
    </message>
    <message>
      <source>No size of it is measured: look at it closely.</source>
      <translation>Kein Maß davon wird gemessen: genau hinsehen.</translation>
    </message>
    <message>
      <source>No slip prints for sheet {sheets}: print a new copy.</source>
      <translation>Zu Platte {sheets} lässt sich kein Abschnitt drucken: druck ein neues Exemplar.</translation>
    </message>
    <message>
      <source>No speed is given by then: the spindle turns as it was last set.</source>
      <translation>Bis hier ist keine Drehzahl angegeben: Die Spindel dreht, wie sie zuletzt eingestellt war.</translation>
    </message>
    <message>
      <source>No such batch waits in a queue</source>
      <translation>Kein solches Los wartet in einer Reihe</translation>
    </message>
    <message>
      <source>No text is asked for now</source>
      <translation>Jetzt wird kein Text gefragt</translation>
    </message>
    <message>
      <source>No whole {product} on the rack: {parts} short</source>
      <translation>Kein ganzes {product} im Regal: {parts} fehlen</translation>
    </message>
    <message>
      <source>No worker has that number</source>
      <translation>Kein Mitarbeiter hat diese Nummer</translation>
    </message>
    <message>
      <source>No {part} are in the pack</source>
      <translation>Keine {part} im Paket</translation>
    </message>
    <message>
      <source>No {part} are under way</source>
      <translation>Keine {part} unterwegs</translation>
    </message>
    <message>
      <source>No {part} of {what} is away</source>
      <translation>Kein {part} von {what} ist draußen</translation>
    </message>
    <message>
      <source>No {size} mm bit is in the drawer</source>
      <translation>Kein Fräser mit {size} mm in der Schublade</translation>
    </message>
    <message>
      <source>Nobody counts the sheets of {material}.</source>
      <translation>Niemand zählt die Platten von {material}.</translation>
    </message>
    <message>
      <source>Nobody is at the bed</source>
      <translation>Niemand ist am Tisch</translation>
    </message>
    <message>
      <source>Nobody is signed in here</source>
      <translation>Hier ist niemand angemeldet</translation>
    </message>
    <message>
      <source>Nobody knows its batch any more</source>
      <translation>Niemand kennt sein Los mehr</translation>
    </message>
    <message>
      <source>Nobody signed in</source>
      <translation>Niemand angemeldet</translation>
    </message>
    <message>
      <source>None is left in the store.</source>
      <translation>Im Lager ist keine mehr.</translation>
    </message>
    <message>
      <source>None of it is good any more. Scan the next slip.</source>
      <translation>Nichts davon ist noch gut. Nächsten Abschnitt scannen.</translation>
    </message>
    <message>
      <source>None off</source>
      <translation>Keine runter</translation>
    </message>
    <message>
      <source>None on</source>
      <translation>Keine drauf</translation>
    </message>
    <message>
      <source>None.</source>
      <translation>Keine.</translation>
    </message>
    <message>
      <source>Not among them?</source>
      <translation>Nicht dabei?</translation>
    </message>
    <message>
      <source>Not complete: {n} to go</source>
      <translation>Nicht vollständig: noch {n}</translation>
    </message>
    <message>
      <source>Not entered yet</source>
      <translation>Noch nicht eingetragen</translation>
    </message>
    <message>
      <source>Not for one order</source>
      <translation>Nicht für einen Auftrag</translation>
    </message>
    <message>
      <source>Not good off it in {n} days</source>
      <translation>In {n} Tagen nicht gut von ihm</translation>
    </message>
    <message>
      <source>Not held down or bed not vacuumed yet</source>
      <translation>Noch nicht niedergehalten oder Tisch nicht gesaugt</translation>
    </message>
    <message>
      <source>Not made: {n}</source>
      <translation>Nicht gemacht: {n}</translation>
    </message>
    <message>
      <source>Not onto the rack: press “Put on the rack”, it goes to packing.</source>
      <translation>Nicht ins Regal: „Ins Regal legen“ drücken, es geht zum Packen.</translation>
    </message>
    <message>
      <source>Not printed: {papers}</source>
      <translation>Nicht gedruckt: {papers}</translation>
    </message>
    <message>
      <source>Not scanned at the door: {n}</source>
      <translation>An der Tür nicht gescannt: {n}</translation>
    </message>
    <message>
      <source>Not this sheet: measure again, or ask.</source>
      <translation>Nicht diese Platte: noch einmal messen oder fragen.</translation>
    </message>
    <message>
      <source>Not while sheet {n} is on the bed</source>
      <translation>Nicht, solange Platte {n} auf dem Tisch liegt</translation>
    </message>
    <message>
      <source>Not while sheet {sheet} is cut</source>
      <translation>Nicht, solange Platte {sheet} gefräst wird</translation>
    </message>
    <message>
      <source>Not while sheet {sheet} is on the bed</source>
      <translation>Nicht, solange Platte {sheet} auf dem Tisch liegt</translation>
    </message>
    <message>
      <source>Not yet</source>
      <translation>Noch nicht</translation>
    </message>
    <message>
      <source>Not yet: it waits</source>
      <translation>Noch nicht: es wartet</translation>
    </message>
    <message>
      <source>Not {zone} any more</source>
      <translation>Doch nicht {zone}</translation>
    </message>
    <message>
      <source>Nothing else waits.</source>
      <translation>Sonst wartet nichts.</translation>
    </message>
    <message>
      <source>Nothing has its place there</source>
      <translation>Nichts hat dort seinen Platz</translation>
    </message>
    <message>
      <source>Nothing has to be cut now.</source>
      <translation>Jetzt muss nichts gefräst werden.</translation>
    </message>
    <message>
      <source>Nothing in it differs from what is known</source>
      <translation>Nichts darin ist anders als bekannt</translation>
    </message>
    <message>
      <source>Nothing is away.</source>
      <translation>Nichts ist draußen.</translation>
    </message>
    <message>
      <source>Nothing is chosen</source>
      <translation>Nichts ist gewählt</translation>
    </message>
    <message>
      <source>Nothing is cut into the sheet.</source>
      <translation>In die Platte wird nichts geschnitten.</translation>
    </message>
    <message>
      <source>Nothing is in its pack. Put the order down.</source>
      <translation>Im Paket ist nichts. Auftrag weglegen.</translation>
    </message>
    <message>
      <source>Nothing is in its queue.</source>
      <translation>Nichts ist in der Reihe.</translation>
    </message>
    <message>
      <source>Nothing is in the pack yet</source>
      <translation>Im Paket ist noch nichts</translation>
    </message>
    <message>
      <source>Nothing is kept.</source>
      <translation>Nichts wird vorgehalten.</translation>
    </message>
    <message>
      <source>Nothing is left to do with it.</source>
      <translation>Es ist nichts mehr damit zu tun.</translation>
    </message>
    <message>
      <source>Nothing is left to take: close the pack.</source>
      <translation>Nichts mehr zu nehmen: schließ das Paket.</translation>
    </message>
    <message>
      <source>Nothing is looked at</source>
      <translation>Es wird nichts durchgesehen</translation>
    </message>
    <message>
      <source>Nothing is marked on the sheet now</source>
      <translation>Auf der Platte wird jetzt nichts markiert</translation>
    </message>
    <message>
      <source>Nothing is measured there</source>
      <translation>Dort wird nichts gemessen</translation>
    </message>
    <message>
      <source>Nothing is missing from this order</source>
      <translation>Diesem Auftrag fehlt nichts</translation>
    </message>
    <message>
      <source>Nothing is missing.</source>
      <translation>Es fehlt nichts.</translation>
    </message>
    <message>
      <source>Nothing is on that cart</source>
      <translation>Auf diesem Wagen ist nichts</translation>
    </message>
    <message>
      <source>Nothing is ordered</source>
      <translation>Nichts ist bestellt</translation>
    </message>
    <message>
      <source>Nothing is promised of it.</source>
      <translation>Nichts davon ist versprochen.</translation>
    </message>
    <message>
      <source>Nothing is spoiled.</source>
      <translation>Kein Ausschuss.</translation>
    </message>
    <message>
      <source>Nothing is taken in before you have looked it over. Esc stops it as well.</source>
      <translation>Nichts wird aufgenommen, bevor es angesehen ist. Auch Esc hält es an.</translation>
    </message>
    <message>
      <source>Nothing is taken in yet. Look it over, then take it in.</source>
      <translation>Noch ist nichts übernommen. Ansehen, dann übernehmen.</translation>
    </message>
    <message>
      <source>Nothing is to be ordered soon</source>
      <translation>Bald ist nichts zu bestellen</translation>
    </message>
    <message>
      <source>Nothing is to be ordered soon.</source>
      <translation>Bald ist nichts zu bestellen.</translation>
    </message>
    <message>
      <source>Nothing of batch {batch} waits any more</source>
      <translation>Von Los {batch} wartet nichts mehr</translation>
    </message>
    <message>
      <source>Nothing of it is counted</source>
      <translation>Davon ist nichts gezählt</translation>
    </message>
    <message>
      <source>Nothing of it is in the shop.</source>
      <translation>Nichts davon ist in der Werkstatt.</translation>
    </message>
    <message>
      <source>Nothing of it is left to pack: close it as owed.</source>
      <translation>Davon ist nichts mehr zu packen: als offen schließen.</translation>
    </message>
    <message>
      <source>Nothing of it is measured</source>
      <translation>Davon wird nichts gemessen</translation>
    </message>
    <message>
      <source>Nothing of it is wrong so far</source>
      <translation>Bisher ist nichts daran falsch</translation>
    </message>
    <message>
      <source>Nothing of it lies there any more</source>
      <translation>Davon liegt nichts mehr dort</translation>
    </message>
    <message>
      <source>Nothing of {what} is away by the book</source>
      <translation>Laut Buch ist nichts von {what} draußen</translation>
    </message>
    <message>
      <source>Nothing to put back from order {order}</source>
      <translation>Von Auftrag {order} ist nichts zurückzulegen</translation>
    </message>
    <message>
      <source>Nothing waits for this router.</source>
      <translation>Für diese Fräse wartet nichts.</translation>
    </message>
    <message>
      <source>Nothing waits.</source>
      <translation>Nichts wartet.</translation>
    </message>
    <message>
      <source>Nothing was changed. Do it at that PC; the database's owner may add this one.</source>
      <translation>Nichts wurde geändert. Dort ändern; wem die Datenbank gehört, kann diesen PC dazunehmen.</translation>
    </message>
    <message>
      <source>Nothing was counted</source>
      <translation>Nichts wurde gezählt</translation>
    </message>
    <message>
      <source>Nothing was counted twice.</source>
      <translation>Nichts wurde doppelt gezählt.</translation>
    </message>
    <message>
      <source>Nothing was counted.</source>
      <translation>Es wurde nichts gezählt.</translation>
    </message>
    <message>
      <source>Nothing was counted. Look at what was entered, and do it again.</source>
      <translation>Es wurde nichts gezählt. Die Eingabe prüfen und es noch einmal tun.</translation>
    </message>
    <message>
      <source>Nothing was cut on {router} since: {why}</source>
      <translation>Seitdem wurde auf {router} nichts gefräst: {why}</translation>
    </message>
    <message>
      <source>Nothing was in hand then: scan your work.</source>
      <translation>Damals war nichts in der Hand: Arbeit scannen.</translation>
    </message>
    <message>
      <source>Nothing was set.</source>
      <translation>Nichts wurde gesetzt.</translation>
    </message>
    <message>
      <source>Nothing was taken in. Read it again when you like.</source>
      <translation>Nichts wurde aufgenommen. Sie kann jederzeit noch einmal gelesen werden.</translation>
    </message>
    <message>
      <source>Nothing was taken in. {first}</source>
      <translation>Nichts wurde übernommen. {first}</translation>
    </message>
    <message>
      <source>Nothing was typed</source>
      <translation>Nichts wurde getippt</translation>
    </message>
    <message>
      <source>Nothing was written down of it.</source>
      <translation>Dazu ist nichts aufgeschrieben.</translation>
    </message>
    <message>
      <source>Nothing yet.</source>
      <translation>Noch nichts.</translation>
    </message>
    <message>
      <source>Nothing.</source>
      <translation>Nichts.</translation>
    </message>
    <message>
      <source>Nothing: all is well.</source>
      <translation>Nichts: alles in Ordnung.</translation>
    </message>
    <message>
      <source>Nov</source>
      <translation>11.</translation>
    </message>
    <message>
      <source>Now each is good or spoiled.</source>
      <translation>Jetzt ist jedes gut oder Ausschuss.</translation>
    </message>
    <message>
      <source>Now {where}. Scan the next slip.</source>
      <translation>Jetzt {where}. Nächsten Abschnitt scannen.</translation>
    </message>
    <message>
      <source>Now “Read its file”.</source>
      <translation>Jetzt „Seine Datei lesen“.</translation>
    </message>
    <message>
      <source>Now “Receive sheets”.</source>
      <translation>Jetzt „Platten annehmen“.</translation>
    </message>
    <message>
      <source>Number cleared</source>
      <translation>Zahl gelöscht</translation>
    </message>
    <message>
      <source>Number {id} cannot be printed as a code: letters A to Z, digits and dashes, at most {most}</source>
      <translation>Nummer {id} lässt sich nicht als Code drucken: Buchstaben A bis Z, Ziffern und Bindestriche, höchstens {most}</translation>
    </message>
    <message>
      <source>Number {id} is taken</source>
      <translation>Nummer {id} ist vergeben</translation>
    </message>
    <message>
      <source>Number {number} was given out twice</source>
      <translation>Nummer {number} wurde zweimal vergeben</translation>
    </message>
    <message>
      <source>Number {n} is not known here</source>
      <translation>Nummer {n} ist hier nicht bekannt</translation>
    </message>
    <message>
      <source>Number: {digits}</source>
      <translation>Zahl: {digits}</translation>
    </message>
    <message>
      <source>Numbers cannot be given back</source>
      <translation>Nummern lassen sich nicht zurückgeben</translation>
    </message>
    <message>
      <source>Oct</source>
      <translation>10.</translation>
    </message>
    <message>
      <source>Off the bed: scan it again. A mistake: go on.</source>
      <translation>Vom Tisch: noch einmal scannen. Versehen: weitermachen.</translation>
    </message>
    <message>
      <source>Off the cart</source>
      <translation>Vom Wagen</translation>
    </message>
    <message>
      <source>Office</source>
      <translation>Büro</translation>
    </message>
    <message>
      <source>On its reference pins, held down, bed vacuumed</source>
      <translation>Auf den Passstiften, gespannt, Tisch abgesaugt</translation>
    </message>
    <message>
      <source>On its way</source>
      <translation>Unterwegs</translation>
    </message>
    <message>
      <source>On the rack for long</source>
      <translation>Reicht im Regal lange</translation>
    </message>
    <message>
      <source>On the rack today</source>
      <translation>Heute im Regal</translation>
    </message>
    <message>
      <source>On the sheet: {where}</source>
      <translation>Auf der Platte: {where}</translation>
    </message>
    <message>
      <source>On the shelf</source>
      <translation>Im Vorrat</translation>
    </message>
    <message>
      <source>On this PC</source>
      <translation>Auf diesem PC</translation>
    </message>
    <message>
      <source>On this walk</source>
      <translation>Auf diesem Gang</translation>
    </message>
    <message>
      <source>On with it: {run} on its pins.</source>
      <translation>Weiter damit: {run} auf den Passstiften.</translation>
    </message>
    <message>
      <source>Once more</source>
      <translation>Noch einmal</translation>
    </message>
    <message>
      <source>Once more the same: two inside in turn count.</source>
      <translation>Dasselbe noch einmal: Zwei gute nacheinander zählen.</translation>
    </message>
    <message>
      <source>Once more the same: two that are right in a row count.</source>
      <translation>Noch einmal dasselbe: zwei richtige hintereinander zählen.</translation>
    </message>
    <message>
      <source>One is made each evening.</source>
      <translation>Jeden Abend entsteht eine.</translation>
    </message>
    <message>
      <source>One less</source>
      <translation>Eins weniger</translation>
    </message>
    <message>
      <source>One like</source>
      <translation>Einer wie</translation>
    </message>
    <message>
      <source>One more</source>
      <translation>Eins mehr</translation>
    </message>
    <message>
      <source>One more sheet</source>
      <translation>Eine Platte mehr</translation>
    </message>
    <message>
      <source>One more was added at {at} by worker {by}</source>
      <translation>Um {at} hat Mitarbeiter {by} eine dazugelegt</translation>
    </message>
    <message>
      <source>One of two packs</source>
      <translation>Eins von zwei Paketen</translation>
    </message>
    <message>
      <source>One walk</source>
      <translation>Ein Gang</translation>
    </message>
    <message>
      <source>Only an order or a batch is cancelled</source>
      <translation>Nur ein Auftrag oder ein Los wird storniert</translation>
    </message>
    <message>
      <source>Only some</source>
      <translation>Nur einige</translation>
    </message>
    <message>
      <source>Only some of it</source>
      <translation>Nur ein Teil davon</translation>
    </message>
    <message>
      <source>Only some of it: which part?</source>
      <translation>Nur ein Teil davon: welches?</translation>
    </message>
    <message>
      <source>Only the first {n} % can be drawn, within {mm} mm.</source>
      <translation>Nur die ersten {n} % lassen sich zeichnen, auf {mm} mm genau.</translation>
    </message>
    <message>
      <source>Only {left} {left|is|are} here to split</source>
      <translation>Nur {left} {left|ist|sind} hier zum Abtrennen</translation>
    </message>
    <message>
      <source>Only {n} {part} in {place} by the book</source>
      <translation>Laut Buch nur {n} {part} in {place}</translation>
    </message>
    <message>
      <source>Onto the cart</source>
      <translation>Auf den Wagen</translation>
    </message>
    <message>
      <source>Onward</source>
      <translation>Weiter</translation>
    </message>
    <message>
      <source>Onward on the path</source>
      <translation>Weiter auf dem Weg</translation>
    </message>
    <message>
      <source>Open a cut file first.</source>
      <translation>Erst eine Fräsdatei öffnen.</translation>
    </message>
    <message>
      <source>Open a lot or a mailer first.</source>
      <translation>Erst eine Charge oder eine Versandtasche öffnen.</translation>
    </message>
    <message>
      <source>Open a worker first.</source>
      <translation>Erst einen Mitarbeiter öffnen.</translation>
    </message>
    <message>
      <source>Open an order, or scan a traveller.</source>
      <translation>Auftrag öffnen oder Laufkarte scannen.</translation>
    </message>
    <message>
      <source>Open it again</source>
      <translation>Wieder öffnen</translation>
    </message>
    <message>
      <source>Open it, then drop one cut file.</source>
      <translation>Ihn öffnen, dann eine Fräsdatei ablegen.</translation>
    </message>
    <message>
      <source>Open pack {pack} again?</source>
      <translation>Paket {pack} wieder öffnen?</translation>
    </message>
    <message>
      <source>Open packs</source>
      <translation>Offene Pakete</translation>
    </message>
    <message>
      <source>Open the pack again</source>
      <translation>Das Paket wieder öffnen</translation>
    </message>
    <message>
      <source>Open the station</source>
      <translation>Station öffnen</translation>
    </message>
    <message>
      <source>Open the worker, touch “A new PIN”.</source>
      <translation>Mitarbeiter öffnen, „Neue PIN“ berühren.</translation>
    </message>
    <message>
      <source>Or another supervisor</source>
      <translation>Oder eine andere Aufsicht</translation>
    </message>
    <message>
      <source>Or parts alone</source>
      <translation>Oder einzelne Teile</translation>
    </message>
    <message>
      <source>Order</source>
      <translation>Auftrag</translation>
    </message>
    <message>
      <source>Order list</source>
      <translation>Bestellliste</translation>
    </message>
    <message>
      <source>Order list, further</source>
      <translation>Bestellliste, weiter</translation>
    </message>
    <message>
      <source>Order new ones.</source>
      <translation>Neue bestellen.</translation>
    </message>
    <message>
      <source>Order soon</source>
      <translation>Bald bestellen</translation>
    </message>
    <message>
      <source>Order soon; lead time not known</source>
      <translation>Bald bestellen; Lieferzeit nicht bekannt</translation>
    </message>
    <message>
      <source>Order {id}</source>
      <translation>Auftrag {id}</translation>
    </message>
    <message>
      <source>Order {id} is not open</source>
      <translation>Auftrag {id} ist nicht offen</translation>
    </message>
    <message>
      <source>Order {order}</source>
      <translation>Auftrag {order}</translation>
    </message>
    <message>
      <source>Order {order} asks for a sheet with {n} × {part}</source>
      <translation>Auftrag {order} erbittet eine Platte mit {n} × {part}</translation>
    </message>
    <message>
      <source>Order {order} goes in two packs: {why}</source>
      <translation>Auftrag {order} geht in zwei Paketen: {why}</translation>
    </message>
    <message>
      <source>Order {order} has no pack</source>
      <translation>Auftrag {order} hat kein Paket</translation>
    </message>
    <message>
      <source>Order {order} has {n} in its open pack</source>
      <translation>Das offene Paket von Auftrag {order} hat {n} darin</translation>
    </message>
    <message>
      <source>Order {order} is begun or gone: it stays as it is</source>
      <translation>Auftrag {order} ist begonnen oder fort: Er bleibt, wie er ist</translation>
    </message>
    <message>
      <source>Order {order} is cancelled</source>
      <translation>Auftrag {order} ist storniert</translation>
    </message>
    <message>
      <source>Order {order} is cancelled but already packed</source>
      <translation>Auftrag {order} ist storniert, aber schon gepackt</translation>
    </message>
    <message>
      <source>Order {order} is cancelled: put back {n} {n|part|parts} of its pack</source>
      <translation>Auftrag {order} ist storniert: {n} {n|Teil|Teile} aus seinem Paket zurücklegen</translation>
    </message>
    <message>
      <source>Order {order} is cancelled: {n} free on the rack</source>
      <translation>Auftrag {order} ist storniert: {n} im Regal frei</translation>
    </message>
    <message>
      <source>Order {order} is closed: all of it is owed</source>
      <translation>Auftrag {order} ist geschlossen: alles steht noch aus</translation>
    </message>
    <message>
      <source>Order {order} is put down</source>
      <translation>Auftrag {order} ist weggelegt</translation>
    </message>
    <message>
      <source>Order {order} is put down: anybody can take it</source>
      <translation>Auftrag {order} ist weggelegt: jeder kann ihn nehmen</translation>
    </message>
    <message>
      <source>Order {order} is short of {n} × {part}</source>
      <translation>Auftrag {order} fehlen {n} × {part}</translation>
    </message>
    <message>
      <source>Order {order} is yours</source>
      <translation>Auftrag {order} gehört Ihnen</translation>
    </message>
    <message>
      <source>Order {order} is {state} already</source>
      <translation>Auftrag {order} ist schon {state}</translation>
    </message>
    <message>
      <source>Order {order} is {state} and stays as it is. Wanted: {lines}, due {due}</source>
      <translation>Auftrag {order} ist {state} und bleibt, wie er ist. Gewünscht: {lines}, fällig {due}</translation>
    </message>
    <message>
      <source>Order {order} stays as it is</source>
      <translation>Auftrag {order} bleibt, wie er ist</translation>
    </message>
    <message>
      <source>Order {order} stays with this station: {n} in its pack</source>
      <translation>Auftrag {order} bleibt bei dieser Station: {n} im Paket</translation>
    </message>
    <message>
      <source>Order {order} takes no more: {n} free on the rack</source>
      <translation>Auftrag {order} nimmt keine mehr: {n} im Regal frei</translation>
    </message>
    <message>
      <source>Order {order} waits for {part}: {where}</source>
      <translation>Auftrag {order} wartet auf {part}: {where}</translation>
    </message>
    <message>
      <source>Order {order} waits. Leave its pack open on the shelf. Take the next.</source>
      <translation>Auftrag {order} wartet. Das Paket offen im Fach lassen. Den nächsten nehmen.</translation>
    </message>
    <message>
      <source>Order {order} wants no {product} more</source>
      <translation>Auftrag {order} braucht kein {product} mehr</translation>
    </message>
    <message>
      <source>Order {order} wants something else</source>
      <translation>Auftrag {order} braucht etwas anderes</translation>
    </message>
    <message>
      <source>Order {order} wants {name}, which nobody entered</source>
      <translation>Auftrag {order} will {name}, das niemand angelegt hat</translation>
    </message>
    <message>
      <source>Order {order} was put down</source>
      <translation>Auftrag {order} wurde weggelegt</translation>
    </message>
    <message>
      <source>Order {order}, more to take</source>
      <translation>Auftrag {order}, weiter zu nehmen</translation>
    </message>
    <message>
      <source>Order {order}: pack {pack} {where}</source>
      <translation>Auftrag {order}: Paket {pack} {where}</translation>
    </message>
    <message>
      <source>Order {order}: {state}, due {at}</source>
      <translation>Auftrag {order}: {state}, fällig {at}</translation>
    </message>
    <message>
      <source>Order {other} takes others when they are there. {then}</source>
      <translation>Auftrag {other} nimmt andere, wenn sie da sind. {then}</translation>
    </message>
    <message>
      <source>Order {owed} is owed to order {order}: {what}</source>
      <translation>Auftrag {owed} wird Auftrag {order} geschuldet: {what}</translation>
    </message>
    <message>
      <source>Orders</source>
      <translation>Aufträge</translation>
    </message>
    <message>
      <source>Orders that want it: {n}.</source>
      <translation>Aufträge, die es wollen: {n}.</translation>
    </message>
    <message>
      <source>Other outlines like this one go through; here {left} mm are left.</source>
      <translation>Andere Umrisse wie dieser gehen durch; hier bleiben {left} mm stehen.</translation>
    </message>
    <message>
      <source>Over {mm} mm deep</source>
      <translation>Tiefer als {mm} mm</translation>
    </message>
    <message>
      <source>Own push</source>
      <translation>Eigener Anlauf</translation>
    </message>
    <message>
      <source>Own pushes</source>
      <translation>Eigene Anläufe</translation>
    </message>
    <message>
      <source>P of a dwell is milliseconds</source>
      <translation>P einer Pause sind Millisekunden</translation>
    </message>
    <message>
      <source>PIN of supervisor {id}</source>
      <translation>PIN der Aufsicht {id}</translation>
    </message>
    <message>
      <source>Pack</source>
      <translation>Paket</translation>
    </message>
    <message>
      <source>Pack {n}: {parts}</source>
      <translation>Paket {n}: {parts}</translation>
    </message>
    <message>
      <source>Pack {other} is of the same order: onto it too.</source>
      <translation>Paket {other} gehört zum selben Auftrag: auch darauf.</translation>
    </message>
    <message>
      <source>Pack {pack}</source>
      <translation>Paket {pack}</translation>
    </message>
    <message>
      <source>Pack {pack} for the shelf</source>
      <translation>Paket {pack} auf Vorrat</translation>
    </message>
    <message>
      <source>Pack {pack} has left already</source>
      <translation>Paket {pack} ist schon weg</translation>
    </message>
    <message>
      <source>Pack {pack} is closed: order {order}</source>
      <translation>Paket {pack} ist geschlossen: Auftrag {order}</translation>
    </message>
    <message>
      <source>Pack {pack} is closed: order {order}, {nth}</source>
      <translation>Paket {pack} ist geschlossen: Auftrag {order}, {nth}</translation>
    </message>
    <message>
      <source>Pack {pack} is for the shelf</source>
      <translation>Paket {pack} ist für den Vorrat</translation>
    </message>
    <message>
      <source>Pack {pack} is in order {order}: {n} {n|part|parts}</source>
      <translation>Paket {pack} ist in Auftrag {order}: {n} {n|Teil|Teile}</translation>
    </message>
    <message>
      <source>Pack {pack} is of order {order}</source>
      <translation>Paket {pack} gehört zu Auftrag {order}</translation>
    </message>
    <message>
      <source>Pack {pack} is off the cart</source>
      <translation>Paket {pack} ist vom Wagen</translation>
    </message>
    <message>
      <source>Pack {pack} is on cart {cart}</source>
      <translation>Paket {pack} ist auf Wagen {cart}</translation>
    </message>
    <message>
      <source>Pack {pack} is on cart {cart} already</source>
      <translation>Paket {pack} ist schon auf Wagen {cart}</translation>
    </message>
    <message>
      <source>Pack {pack} is on {cart}</source>
      <translation>Paket {pack} ist auf {cart}</translation>
    </message>
    <message>
      <source>Pack {pack} is opened</source>
      <translation>Paket {pack} ist geöffnet</translation>
    </message>
    <message>
      <source>Pack {pack} is opened: {n} back on the rack</source>
      <translation>Paket {pack} ist geöffnet: {n} zurück im Regal</translation>
    </message>
    <message>
      <source>Pack {pack} left with its cart</source>
      <translation>Paket {pack} ging mit seinem Wagen</translation>
    </message>
    <message>
      <source>Pack {pack} of it is still to be opened: scan it.</source>
      <translation>Paket {pack} davon ist noch zu öffnen: scanne es.</translation>
    </message>
    <message>
      <source>Pack {pack} seen at the door</source>
      <translation>Paket {pack} an der Tür gesehen</translation>
    </message>
    <message>
      <source>Pack {pack} was loaded before this PC's history begins</source>
      <translation>Paket {pack} wurde geladen, bevor der Verlauf auf diesem PC beginnt</translation>
    </message>
    <message>
      <source>Pack {pack} was seen already</source>
      <translation>Paket {pack} wurde schon gesehen</translation>
    </message>
    <message>
      <source>Pack {pack}: batch {batch} in it is held</source>
      <translation>Paket {pack}: Los {batch} darin ist gesperrt</translation>
    </message>
    <message>
      <source>Pack {pack}: one {product} for the shelf</source>
      <translation>Paket {pack}: ein {product} für den Vorrat</translation>
    </message>
    <message>
      <source>Pack {pack}: {g} g on the scale, {grams} ± {plus} g expected</source>
      <translation>Paket {pack}: {g} g auf der Waage, {grams} ± {plus} g erwartet</translation>
    </message>
    <message>
      <source>Pack {pack}: {where}, {whom}</source>
      <translation>Paket {pack}: {where}, {whom}</translation>
    </message>
    <message>
      <source>Packing</source>
      <translation>Packen</translation>
    </message>
    <message>
      <source>Packing puts back {n} {n|part|parts} of its pack.</source>
      <translation>Das Packen legt {n} {n|Teil|Teile} aus seinem Paket zurück.</translation>
    </message>
    <message>
      <source>Packing says which order it is for.</source>
      <translation>Das Packen sagt, für welchen Auftrag sie ist.</translation>
    </message>
    <message>
      <source>Packing takes it as any other. Supervisor {by}: {why}.</source>
      <translation>Er wird gepackt wie jeder andere. Aufsicht {by}: {why}.</translation>
    </message>
    <message>
      <source>Packs count it down.</source>
      <translation>Pakete zählen es herunter.</translation>
    </message>
    <message>
      <source>Packs on it: {n}. Next pack, or to the door.</source>
      <translation>Pakete darauf: {n}. Nächstes Paket oder zur Tür.</translation>
    </message>
    <message>
      <source>Packs take no such thing</source>
      <translation>So etwas brauchen Pakete nicht</translation>
    </message>
    <message>
      <source>Packs that left last</source>
      <translation>Zuletzt abgegangene Pakete</translation>
    </message>
    <message>
      <source>Packs that wait: {n}</source>
      <translation>Wartende Pakete: {n}</translation>
    </message>
    <message>
      <source>Page back</source>
      <translation>Seite zurück</translation>
    </message>
    <message>
      <source>Page {page}</source>
      <translation>Seite {page}</translation>
    </message>
    <message>
      <source>Page {page} of {count}</source>
      <translation>Seite {page} von {count}</translation>
    </message>
    <message>
      <source>Paper</source>
      <translation>Papier</translation>
    </message>
    <message>
      <source>Part</source>
      <translation>Teil</translation>
    </message>
    <message>
      <source>Part cards</source>
      <translation>Teilekarten</translation>
    </message>
    <message>
      <source>Part missing</source>
      <translation>Teil fehlt</translation>
    </message>
    <message>
      <source>Parts</source>
      <translation>Teile</translation>
    </message>
    <message>
      <source>Parts and mailer, without wrap.</source>
      <translation>Teile und Versandtasche, ohne Polster.</translation>
    </message>
    <message>
      <source>Parts through the shop</source>
      <translation>Teile durch die Werkstatt</translation>
    </message>
    <message>
      <source>Pass it on or put it down first.</source>
      <translation>Erst weitergeben oder weglegen.</translation>
    </message>
    <message>
      <source>Pass on</source>
      <translation>Weitergeben</translation>
    </message>
    <message>
      <source>Pass on: {count}</source>
      <translation>Weitergeben: {count}</translation>
    </message>
    <message>
      <source>Passed on at {at} by worker {worker}: {good} good</source>
      <translation>Weitergegeben um {at} von Mitarbeiter {worker}: {good} gut</translation>
    </message>
    <message>
      <source>Passed on today</source>
      <translation>Heute weitergegeben</translation>
    </message>
    <message>
      <source>People, PINs, reasons and settings are changed at {n|station|stations} {stations} alone</source>
      <translation>Personen, PINs, Gründe und Einstellungen werden nur an {n|Station|Station} {stations} geändert</translation>
    </message>
    <message>
      <source>Pick it up again to go on with it.</source>
      <translation>Nimm es wieder auf, um weiterzuzählen.</translation>
    </message>
    <message>
      <source>Pick list of order {order}</source>
      <translation>Entnahmeliste zu Auftrag {order}</translation>
    </message>
    <message>
      <source>Pick up your work first.</source>
      <translation>Erst die Arbeit aufnehmen.</translation>
    </message>
    <message>
      <source>Place</source>
      <translation>Platz</translation>
    </message>
    <message>
      <source>Play the path, or pause</source>
      <translation>Den Weg abspielen oder anhalten</translation>
    </message>
    <message>
      <source>Play, pause</source>
      <translation>Abspielen, Anhalten</translation>
    </message>
    <message>
      <source>Plunges at {feed} mm/min; elsewhere this bit does at {usual} mm/min.</source>
      <translation>Taucht mit {feed} mm/min ein; sonst taucht dieser Fräser mit {usual} mm/min ein.</translation>
    </message>
    <message>
      <source>Plunges at {feed} mm/min; this shop takes {most} mm/min at most.</source>
      <translation>Taucht mit {feed} mm/min ein; diese Werkstatt nimmt höchstens {most} mm/min.</translation>
    </message>
    <message>
      <source>Pocket {pocket} is empty</source>
      <translation>Platz {pocket} im Wechsler ist leer</translation>
    </message>
    <message>
      <source>Pockets of another size: {mm} mm².</source>
      <translation>Taschen anderer Größe: {mm} mm².</translation>
    </message>
    <message>
      <source>Pockets {now} mm deep instead of {was}.</source>
      <translation>Taschen {now} mm tief statt {was}.</translation>
    </message>
    <message>
      <source>Popping</source>
      <translation>Ausbrechen</translation>
    </message>
    <message>
      <source>Popping passes it on first.</source>
      <translation>Erst gibt das Ausbrechen es weiter.</translation>
    </message>
    <message>
      <source>Postage</source>
      <translation>Porto</translation>
    </message>
    <message>
      <source>Postage step</source>
      <translation>Portostufe</translation>
    </message>
    <message>
      <source>Press it again to change it.</source>
      <translation>Zum Ändern noch einmal drücken.</translation>
    </message>
    <message>
      <source>Press “{over}”.</source>
      <translation>„{over}“ drücken.</translation>
    </message>
    <message>
      <source>Press “{start}”.</source>
      <translation>„{start}“ drücken.</translation>
    </message>
    <message>
      <source>Print</source>
      <translation>Drucken</translation>
    </message>
    <message>
      <source>Print a new copy</source>
      <translation>Neue Kopie drucken</translation>
    </message>
    <message>
      <source>Print it again at packing: “Label again”.</source>
      <translation>Beim Packen neu drucken: „Noch ein Etikett“.</translation>
    </message>
    <message>
      <source>Print it again.</source>
      <translation>Neu drucken.</translation>
    </message>
    <message>
      <source>Print it again: “More”, then “Print a new copy”.</source>
      <translation>Neu drucken: „Mehr“, dann „Neue Kopie drucken“.</translation>
    </message>
    <message>
      <source>Print its card</source>
      <translation>Karte drucken</translation>
    </message>
    <message>
      <source>Print its card and put it on the stack.</source>
      <translation>Karte drucken und auf den Stapel legen.</translation>
    </message>
    <message>
      <source>Print list</source>
      <translation>Liste drucken</translation>
    </message>
    <message>
      <source>Print the cards anew.</source>
      <translation>Karten neu drucken.</translation>
    </message>
    <message>
      <source>Print the cart list</source>
      <translation>Wagenliste drucken</translation>
    </message>
    <message>
      <source>Print the label again</source>
      <translation>Etikett noch einmal drucken</translation>
    </message>
    <message>
      <source>Print the list</source>
      <translation>Liste drucken</translation>
    </message>
    <message>
      <source>Print there</source>
      <translation>Dort drucken</translation>
    </message>
    <message>
      <source>Printer</source>
      <translation>Drucker</translation>
    </message>
    <message>
      <source>Printer {name} did not print</source>
      <translation>Drucker {name} hat nicht gedruckt</translation>
    </message>
    <message>
      <source>Printer {name} is not attached</source>
      <translation>Drucker {name} ist nicht angeschlossen</translation>
    </message>
    <message>
      <source>Product</source>
      <translation>Produkt</translation>
    </message>
    <message>
      <source>Products</source>
      <translation>Produkte</translation>
    </message>
    <message>
      <source>Promised and coming</source>
      <translation>Versprochen und im Kommen</translation>
    </message>
    <message>
      <source>Purchase</source>
      <translation>Bestellung</translation>
    </message>
    <message>
      <source>Push it to the door and scan “At the door”.</source>
      <translation>Zur Tür schieben und „An der Tür“ scannen.</translation>
    </message>
    <message>
      <source>Push the cart, never pull it. See over the load. Heavy packs low.</source>
      <translation>Den Wagen schieben, nie ziehen. Über die Ladung sehen. Schwere Pakete nach unten.</translation>
    </message>
    <message>
      <source>Put a file there, then look again.</source>
      <translation>Eine Datei dort ablegen, dann noch einmal nachsehen.</translation>
    </message>
    <message>
      <source>Put a fit bit in. Not broken after all? The office sets it right.</source>
      <translation>Setze einen guten Fräser ein. Doch nicht gebrochen? Das Büro berichtigt es.</translation>
    </message>
    <message>
      <source>Put a new one in and scan it, or report the sheet spoiled.</source>
      <translation>Neuen einsetzen und scannen, oder die Platte als Ausschuss melden.</translation>
    </message>
    <message>
      <source>Put a new one in.</source>
      <translation>Einen neuen einsetzen.</translation>
    </message>
    <message>
      <source>Put a {size} mm bit in and scan it.</source>
      <translation>Einen Fräser mit {size} mm einsetzen und scannen.</translation>
    </message>
    <message>
      <source>Put all back</source>
      <translation>Alles zurücklegen</translation>
    </message>
    <message>
      <source>Put aside what lies there: {where}.</source>
      <translation>Lege beiseite, was dort liegt: {where}.</translation>
    </message>
    <message>
      <source>Put back</source>
      <translation>Zurücklegen</translation>
    </message>
    <message>
      <source>Put back what is in its pack.</source>
      <translation>Zurücklegen, was im Paket ist.</translation>
    </message>
    <message>
      <source>Put back what is too many, or take more.</source>
      <translation>Zuviel zurücklegen oder mehr nehmen.</translation>
    </message>
    <message>
      <source>Put back {parts}. Then close it as owed.</source>
      <translation>{parts} zurücklegen. Dann als offen schließen.</translation>
    </message>
    <message>
      <source>Put back {parts}. Then close the pack.</source>
      <translation>{parts} zurücklegen. Dann Paket schließen.</translation>
    </message>
    <message>
      <source>Put everything back on the rack: scan each part, or all at once.</source>
      <translation>Alles ins Regal zurücklegen: jedes Teil scannen oder alles auf einmal.</translation>
    </message>
    <message>
      <source>Put it aside with its slip. First-off check, then the next sheet.</source>
      <translation>Mit ihrem Abschnitt beiseite legen. Erstteil prüfen, dann die nächste Platte.</translation>
    </message>
    <message>
      <source>Put it aside with its slip; take the next sheet.</source>
      <translation>Mit dem Abschnitt beiseitelegen; die nächste Platte nehmen.</translation>
    </message>
    <message>
      <source>Put it aside, take another. Scan it later with free hands, to open it.</source>
      <translation>Beiseitelegen, ein anderes nehmen. Später mit freien Händen scannen, um es zu öffnen.</translation>
    </message>
    <message>
      <source>Put it aside. A supervisor lets it go on.</source>
      <translation>Beiseitelegen. Die Aufsicht lässt es weitergehen.</translation>
    </message>
    <message>
      <source>Put it aside; a supervisor lets it go on.</source>
      <translation>Beiseitelegen; die Aufsicht lässt es weitergehen.</translation>
    </message>
    <message>
      <source>Put it aside; ask the supervisor.</source>
      <translation>Beiseitelegen; die Aufsicht fragen.</translation>
    </message>
    <message>
      <source>Put it aside; the office names the approved one.</source>
      <translation>Beiseitelegen; das Büro nennt die freigegebene.</translation>
    </message>
    <message>
      <source>Put it aside; the office releases it anew.</source>
      <translation>Beiseitelegen; das Büro gibt es neu frei.</translation>
    </message>
    <message>
      <source>Put it back first.</source>
      <translation>Erst zurücklegen.</translation>
    </message>
    <message>
      <source>Put it back on the rack</source>
      <translation>Ins Regal zurücklegen</translation>
    </message>
    <message>
      <source>Put it back: packing takes it for an order.</source>
      <translation>Zurücklegen: Das Packen nimmt es für einen Auftrag.</translation>
    </message>
    <message>
      <source>Put it in and scan it.</source>
      <translation>Einsetzen und scannen.</translation>
    </message>
    <message>
      <source>Put it with its {n} {n|piece|pieces}; throw the other paper away.</source>
      <translation>Zu seinen {n} {n|Stück|Stück} legen; das Papier von vorher wegwerfen.</translation>
    </message>
    <message>
      <source>Put it with the packs.</source>
      <translation>Zu den Paketen stellen.</translation>
    </message>
    <message>
      <source>Put its parts back on the rack.</source>
      <translation>Seine Teile ins Regal zurücklegen.</translation>
    </message>
    <message>
      <source>Put its parts back, under their own masters.</source>
      <translation>Die Teile zurücklegen, unter ihre eigenen Muster.</translation>
    </message>
    <message>
      <source>Put its traveller with the sheets.</source>
      <translation>Laufkarte zu den Platten legen.</translation>
    </message>
    <message>
      <source>Put on the rack</source>
      <translation>Ins Regal legen</translation>
    </message>
    <message>
      <source>Put one there, then look again.</source>
      <translation>Eine dort ablegen, dann noch einmal nachsehen.</translation>
    </message>
    <message>
      <source>Put pack {pack} back on the shelf. {then}</source>
      <translation>Paket {pack} zurück in den Vorrat legen. {then}</translation>
    </message>
    <message>
      <source>Put the first pack on</source>
      <translation>Erstes Paket auflegen</translation>
    </message>
    <message>
      <source>Put the {part} back; sort at the bench.</source>
      <translation>{part} zurücklegen; am Packtisch sortieren.</translation>
    </message>
    <message>
      <source>Put them back: rack {place}.</source>
      <translation>Zurücklegen: Regal {place}.</translation>
    </message>
    <message>
      <source>Put them with batch {batch} at trimming.</source>
      <translation>Zu Los {batch} beim Verputzen legen.</translation>
    </message>
    <message>
      <source>Put what back?</source>
      <translation>Was zurücklegen?</translation>
    </message>
    <message>
      <source>Put {n} back</source>
      <translation>{n} zurücklegen</translation>
    </message>
    <message>
      <source>Q is too small for this depth; nothing is drilled here.</source>
      <translation>Q ist für diese Tiefe zu klein; hier wird nichts gebohrt.</translation>
    </message>
    <message>
      <source>Queue of this router</source>
      <translation>Reihe dieser Fräse</translation>
    </message>
    <message>
      <source>R lies below the hole's bottom; nothing is drilled here.</source>
      <translation>R liegt unter dem Grund des Lochs; hier wird nichts gebohrt.</translation>
    </message>
    <message>
      <source>R under G91 is a height</source>
      <translation>R unter G91 ist eine Höhe</translation>
    </message>
    <message>
      <source>Rack place</source>
      <translation>Regalplatz</translation>
    </message>
    <message>
      <source>Rack places</source>
      <translation>Regalplätze</translation>
    </message>
    <message>
      <source>Rack {name}</source>
      <translation>Regal {name}</translation>
    </message>
    <message>
      <source>Rack {name} is no part's place</source>
      <translation>Regalplatz {name} gehört keinem Teil</translation>
    </message>
    <message>
      <source>Rack {place}</source>
      <translation>Regal {place}</translation>
    </message>
    <message>
      <source>Rack {rack} is the place of {part}</source>
      <translation>Regal {rack} ist der Platz von {part}</translation>
    </message>
    <message>
      <source>Rack {rack}: {n} {part}</source>
      <translation>Regal {rack}: {n} {part}</translation>
    </message>
    <message>
      <source>Rapids</source>
      <translation>Eilgänge</translation>
    </message>
    <message>
      <source>Re-home it, then “{over}”.</source>
      <translation>Neu referenzieren, dann „{over}“.</translation>
    </message>
    <message>
      <source>Re-home the router</source>
      <translation>Fräse neu referenzieren</translation>
    </message>
    <message>
      <source>Re-home the router first: {why}</source>
      <translation>Erst die Fräse neu referenzieren: {why}</translation>
    </message>
    <message>
      <source>Read CSV</source>
      <translation>CSV lesen</translation>
    </message>
    <message>
      <source>Read a CSV file</source>
      <translation>CSV-Datei lesen</translation>
    </message>
    <message>
      <source>Read again</source>
      <translation>Noch einmal lesen</translation>
    </message>
    <message>
      <source>Read all lists</source>
      <translation>Alle Listen einlesen</translation>
    </message>
    <message>
      <source>Read another file.</source>
      <translation>Andere Datei lesen.</translation>
    </message>
    <message>
      <source>Read before the next sheet</source>
      <translation>Vor der nächsten Platte lesen</translation>
    </message>
    <message>
      <source>Read by worker {by}: {count}</source>
      <translation>Gelesen von Mitarbeiter {by}: {count}</translation>
    </message>
    <message>
      <source>Read first: {text}</source>
      <translation>Erst lesen: {text}</translation>
    </message>
    <message>
      <source>Read it again.</source>
      <translation>Lies sie noch einmal.</translation>
    </message>
    <message>
      <source>Read its file</source>
      <translation>Seine Datei lesen</translation>
    </message>
    <message>
      <source>Read the file again.</source>
      <translation>Datei noch einmal lesen.</translation>
    </message>
    <message>
      <source>Read this</source>
      <translation>Bitte lesen</translation>
    </message>
    <message>
      <source>Read what to cut next; a touched row tells why.</source>
      <translation>Lies, was als Nächstes zu fräsen ist; eine berührte Zeile sagt, warum.</translation>
    </message>
    <message>
      <source>Reading the copy again</source>
      <translation>Die Kopie wird noch einmal gelesen</translation>
    </message>
    <message>
      <source>Reading the text</source>
      <translation>Der Text wird gelesen</translation>
    </message>
    <message>
      <source>Reading {file} was stopped</source>
      <translation>Das Lesen von {file} wurde angehalten</translation>
    </message>
    <message>
      <source>Ready</source>
      <translation>Bereit</translation>
    </message>
    <message>
      <source>Reason</source>
      <translation>Grund</translation>
    </message>
    <message>
      <source>Reason “{words}”: {use}</source>
      <translation>Grund „{words}“: {use}</translation>
    </message>
    <message>
      <source>Reasons</source>
      <translation>Gründe</translation>
    </message>
    <message>
      <source>Receive it in the office.</source>
      <translation>Im Büro annehmen.</translation>
    </message>
    <message>
      <source>Receive mailers</source>
      <translation>Versandtaschen annehmen</translation>
    </message>
    <message>
      <source>Receive sheets</source>
      <translation>Platten annehmen</translation>
    </message>
    <message>
      <source>Recount of batch {batch}: {book} by the book, {counted} there</source>
      <translation>Los {batch} nachgezählt: {book} laut Buch, {counted} da</translation>
    </message>
    <message>
      <source>Release and print</source>
      <translation>Freigeben und drucken</translation>
    </message>
    <message>
      <source>Release it, or touch another row.</source>
      <translation>Freigeben oder eine andere Zeile berühren.</translation>
    </message>
    <message>
      <source>Release the cut file whose sheets it runs on.</source>
      <translation>Die Fräsdatei freigeben, auf deren Platten sie läuft.</translation>
    </message>
    <message>
      <source>Release what blocks, print</source>
      <translation>Freigeben, was aufhält, und drucken</translation>
    </message>
    <message>
      <source>Release what is chosen, print</source>
      <translation>Gewähltes freigeben und drucken</translation>
    </message>
    <message>
      <source>Release {name}</source>
      <translation>{name} freigeben</translation>
    </message>
    <message>
      <source>Release {n} of {file}, print</source>
      <translation>{n} von {file} freigeben, drucken</translation>
    </message>
    <message>
      <source>Release {n}, print</source>
      <translation>{n} freigeben, drucken</translation>
    </message>
    <message>
      <source>Report a stop</source>
      <translation>Halt melden</translation>
    </message>
    <message>
      <source>Report a stop and isolate the spindle first.</source>
      <translation>Erst Halt melden und Spindel sichern.</translation>
    </message>
    <message>
      <source>Restore a backup</source>
      <translation>Sicherung zurückholen</translation>
    </message>
    <message>
      <source>Resurfaced</source>
      <translation>Abgeplant</translation>
    </message>
    <message>
      <source>Revision</source>
      <translation>Revision</translation>
    </message>
    <message>
      <source>Revision {letter} of {name} is in</source>
      <translation>Revision {letter} von {name} ist übernommen</translation>
    </message>
    <message>
      <source>Revision {letter}: {n} {n|part|parts} a sheet, {minutes} min.</source>
      <translation>Revision {letter}: {n} {n|Teil|Teile} je Platte, {minutes} min.</translation>
    </message>
    <message>
      <source>Revision {offered} offered, {letter} is approved</source>
      <translation>Revision {offered} vorgelegt, freigegeben ist {letter}</translation>
    </message>
    <message>
      <source>Revisions</source>
      <translation>Revisionen</translation>
    </message>
    <message>
      <source>Rework traveller {child} goes with the {n}.</source>
      <translation>Die Nacharbeitskarte {child} geht mit: {n}.</translation>
    </message>
    <message>
      <source>Rework {batch}, try {n} of {most}</source>
      <translation>Nacharbeit {batch}, Versuch {n} von {most}</translation>
    </message>
    <message>
      <source>Right twice: batch {batch} may go on.</source>
      <translation>Zweimal richtig: Los {batch} darf weiter.</translation>
    </message>
    <message>
      <source>Right twice: batch {batch} may go on. Measure {heaps} too, each for itself.</source>
      <translation>Zweimal richtig: Los {batch} darf weiter. Auch {heaps} messen, jedes für sich.</translation>
    </message>
    <message>
      <source>Rounds are hold-downs. Numbers on pieces: in which order they are popped.</source>
      <translation>Kreise sind Niederhalter. Zahlen auf Teilen: in welcher Folge sie gelöst werden.</translation>
    </message>
    <message>
      <source>Router</source>
      <translation>Fräse</translation>
    </message>
    <message>
      <source>Router re-homed</source>
      <translation>Fräse neu referenziert</translation>
    </message>
    <message>
      <source>Router table {bench}</source>
      <translation>Frästisch {bench}</translation>
    </message>
    <message>
      <source>Router {id}</source>
      <translation>Fräse {id}</translation>
    </message>
    <message>
      <source>Routers</source>
      <translation>Fräsen</translation>
    </message>
    <message>
      <source>Row 1</source>
      <translation>Zeile 1</translation>
    </message>
    <message>
      <source>Row 10</source>
      <translation>Zeile 10</translation>
    </message>
    <message>
      <source>Row 11</source>
      <translation>Zeile 11</translation>
    </message>
    <message>
      <source>Row 12</source>
      <translation>Zeile 12</translation>
    </message>
    <message>
      <source>Row 13</source>
      <translation>Zeile 13</translation>
    </message>
    <message>
      <source>Row 14</source>
      <translation>Zeile 14</translation>
    </message>
    <message>
      <source>Row 15</source>
      <translation>Zeile 15</translation>
    </message>
    <message>
      <source>Row 16</source>
      <translation>Zeile 16</translation>
    </message>
    <message>
      <source>Row 17</source>
      <translation>Zeile 17</translation>
    </message>
    <message>
      <source>Row 18</source>
      <translation>Zeile 18</translation>
    </message>
    <message>
      <source>Row 2</source>
      <translation>Zeile 2</translation>
    </message>
    <message>
      <source>Row 3</source>
      <translation>Zeile 3</translation>
    </message>
    <message>
      <source>Row 4</source>
      <translation>Zeile 4</translation>
    </message>
    <message>
      <source>Row 5</source>
      <translation>Zeile 5</translation>
    </message>
    <message>
      <source>Row 6</source>
      <translation>Zeile 6</translation>
    </message>
    <message>
      <source>Row 7</source>
      <translation>Zeile 7</translation>
    </message>
    <message>
      <source>Row 8</source>
      <translation>Zeile 8</translation>
    </message>
    <message>
      <source>Row 9</source>
      <translation>Zeile 9</translation>
    </message>
    <message>
      <source>Row {n}</source>
      <translation>Zeile {n}</translation>
    </message>
    <message>
      <source>Running low</source>
      <translation>Geht zur Neige</translation>
    </message>
    <message>
      <source>Runs of each sheet, on its reference pins from the second: {runs}</source>
      <translation>Durchgänge jeder Platte, ab dem zweiten auf ihren Passstiften: {runs}</translation>
    </message>
    <message>
      <source>R{id} · {ends}</source>
      <translation>F{id} · {ends}</translation>
    </message>
    <message>
      <source>Sat</source>
      <translation>Sa</translation>
    </message>
    <message>
      <source>Save</source>
      <translation>Speichern</translation>
    </message>
    <message>
      <source>Save as PDF and open it</source>
      <translation>Als PDF speichern und öffnen</translation>
    </message>
    <message>
      <source>Save it or leave it, then drop the file again.</source>
      <translation>Sichern oder lassen, dann die Datei noch einmal ablegen.</translation>
    </message>
    <message>
      <source>Say how many are good.</source>
      <translation>Sagen, wie viele gut sind.</translation>
    </message>
    <message>
      <source>Say how many go on.</source>
      <translation>Sagen, wie viele weitergehen.</translation>
    </message>
    <message>
      <source>Say it otherwise</source>
      <translation>Anders sagen</translation>
    </message>
    <message>
      <source>Say that it is wrong; put a new bit in, measure its first sheet.</source>
      <translation>„Falsch“ melden; neuen Fräser einsetzen, seine erste Platte messen.</translation>
    </message>
    <message>
      <source>Say what you see</source>
      <translation>Sagen, was zu sehen ist</translation>
    </message>
    <message>
      <source>Scan a badge, touch it, or type its number; the PIN comes after.</source>
      <translation>Einen Ausweis scannen oder berühren oder seine Nummer tippen; die PIN kommt danach.</translation>
    </message>
    <message>
      <source>Scan a cart, then its packs.</source>
      <translation>Scann einen Wagen, dann seine Pakete.</translation>
    </message>
    <message>
      <source>Scan a new join card here.</source>
      <translation>Scanne hier eine neue Beitrittskarte.</translation>
    </message>
    <message>
      <source>Scan a new join card here: it gives this PC a number of its own.</source>
      <translation>Scanne hier eine neue Beitrittskarte: Sie gibt diesem PC eine eigene Nummer.</translation>
    </message>
    <message>
      <source>Scan a part's card, or touch its row.</source>
      <translation>Karte eines Teils scannen oder seine Zeile berühren.</translation>
    </message>
    <message>
      <source>Scan a part, a rack place, a lot or a traveller.</source>
      <translation>Teil, Regalplatz, Charge oder Laufkarte scannen.</translation>
    </message>
    <message>
      <source>Scan a part, a rack place, a lot or a traveller; or touch a part.</source>
      <translation>Teil, Regalplatz, Charge oder Laufkarte scannen; oder ein Teil berühren.</translation>
    </message>
    <message>
      <source>Scan a reason card for sheets.</source>
      <translation>Einen Grund für Platten scannen.</translation>
    </message>
    <message>
      <source>Scan a reason or “Missing” first.</source>
      <translation>Erst einen Grund oder „Fehlt“ scannen.</translation>
    </message>
    <message>
      <source>Scan a reason, or enter how many.</source>
      <translation>Einen Grund scannen oder die Anzahl eingeben.</translation>
    </message>
    <message>
      <source>Scan a slip</source>
      <translation>Einen Abschnitt scannen</translation>
    </message>
    <message>
      <source>Scan a slip or a traveller.</source>
      <translation>Scann einen Abschnitt oder eine Laufkarte.</translation>
    </message>
    <message>
      <source>Scan a traveller</source>
      <translation>Eine Laufkarte scannen</translation>
    </message>
    <message>
      <source>Scan a traveller first.</source>
      <translation>Erst eine Laufkarte scannen.</translation>
    </message>
    <message>
      <source>Scan a traveller.</source>
      <translation>Eine Laufkarte scannen.</translation>
    </message>
    <message>
      <source>Scan again once it works.</source>
      <translation>Noch einmal scannen, sobald sie wieder geht.</translation>
    </message>
    <message>
      <source>Scan an order, or touch it.</source>
      <translation>Scann einen Auftrag, oder berühr ihn.</translation>
    </message>
    <message>
      <source>Scan another part.</source>
      <translation>Ein anderes Teil scannen.</translation>
    </message>
    <message>
      <source>Scan another traveller.</source>
      <translation>Eine andere Laufkarte scannen.</translation>
    </message>
    <message>
      <source>Scan another.</source>
      <translation>Ein anderes scannen.</translation>
    </message>
    <message>
      <source>Scan every pack on it.</source>
      <translation>Jedes Paket darauf scannen.</translation>
    </message>
    <message>
      <source>Scan every pack on it: {n}.</source>
      <translation>Jedes Paket darauf scannen: {n}.</translation>
    </message>
    <message>
      <source>Scan it again for yet another.</source>
      <translation>Für noch eine noch einmal scannen.</translation>
    </message>
    <message>
      <source>Scan it again to cut it here all the same.</source>
      <translation>Noch einmal scannen, um es trotzdem hier zu fräsen.</translation>
    </message>
    <message>
      <source>Scan it again to cut one more sheet, or take the next batch.</source>
      <translation>Noch einmal scannen fräst eine Platte mehr, oder nimm das nächste Los.</translation>
    </message>
    <message>
      <source>Scan it again. Typed by hand, it needs its last character too.</source>
      <translation>Noch einmal scannen. Von Hand getippt gehört auch das letzte Zeichen dazu.</translation>
    </message>
    <message>
      <source>Scan it at popping, when a fault is counted.</source>
      <translation>Beim Ausbrechen scannen, wenn ein Fehler gezählt wird.</translation>
    </message>
    <message>
      <source>Scan it if it is in. Spindle stopped, sheet done: scan again.</source>
      <translation>Scannen, wenn er drin ist. Spindel steht, Platte fertig: noch einmal scannen.</translation>
    </message>
    <message>
      <source>Scan it once more. It is written down for the makers.</source>
      <translation>Noch einmal scannen. Für die Hersteller ist es notiert.</translation>
    </message>
    <message>
      <source>Scan it when a reason is asked for.</source>
      <translation>Scannen, wenn nach einem Grund gefragt wird.</translation>
    </message>
    <message>
      <source>Scan its card again.</source>
      <translation>Die Karte noch einmal scannen.</translation>
    </message>
    <message>
      <source>Scan its card, or its row.</source>
      <translation>Karte oder Zeile scannen.</translation>
    </message>
    <message>
      <source>Scan its card, or touch its row; a number first for several.</source>
      <translation>Karte scannen oder Zeile berühren; für mehrere erst die Zahl.</translation>
    </message>
    <message>
      <source>Scan its card, or touch its row; a number first for some.</source>
      <translation>Karte scannen oder Zeile berühren; für einige erst eine Zahl.</translation>
    </message>
    <message>
      <source>Scan its card, or type its name.</source>
      <translation>Karte scannen oder Namen tippen.</translation>
    </message>
    <message>
      <source>Scan its card.</source>
      <translation>Karte scannen.</translation>
    </message>
    <message>
      <source>Scan its code again. Is it new? “{new}”.</source>
      <translation>Seinen Code noch einmal scannen. Ist er neu? „{new}“.</translation>
    </message>
    <message>
      <source>Scan its label there, then touch “Open it again”.</source>
      <translation>Dort sein Etikett scannen, dann „Wieder öffnen“ berühren.</translation>
    </message>
    <message>
      <source>Scan its label, or touch it.</source>
      <translation>Sein Etikett scannen, oder es berühren.</translation>
    </message>
    <message>
      <source>Scan its part, or type a name.</source>
      <translation>Teil scannen oder Namen tippen.</translation>
    </message>
    <message>
      <source>Scan its parts; or scan a pack that it wants.</source>
      <translation>Seine Teile scannen; oder ein Paket, das er braucht.</translation>
    </message>
    <message>
      <source>Scan its rack place.</source>
      <translation>Regalplatz scannen.</translation>
    </message>
    <message>
      <source>Scan its slip when it is off the bed.</source>
      <translation>Abschnitt scannen, wenn sie vom Tisch ist.</translation>
    </message>
    <message>
      <source>Scan its traveller first.</source>
      <translation>Erst die Laufkarte scannen.</translation>
    </message>
    <message>
      <source>Scan its traveller or touch its row.</source>
      <translation>Laufkarte scannen oder Zeile berühren.</translation>
    </message>
    <message>
      <source>Scan its traveller.</source>
      <translation>Laufkarte scannen.</translation>
    </message>
    <message>
      <source>Scan one of its parts; or leave it, then scan this part alone.</source>
      <translation>Eines seiner Teile scannen; oder lassen, dann dieses Teil allein scannen.</translation>
    </message>
    <message>
      <source>Scan one of our cards or travellers.</source>
      <translation>Eine unserer Karten oder Laufkarten scannen.</translation>
    </message>
    <message>
      <source>Scan one of those shown.</source>
      <translation>Eins der gezeigten scannen.</translation>
    </message>
    <message>
      <source>Scan or touch a pack.</source>
      <translation>Ein Paket scannen oder berühren.</translation>
    </message>
    <message>
      <source>Scan or touch a reason, or leave it: then the number can be changed.</source>
      <translation>Scanne oder berühre einen Grund, oder lass es: dann lässt sich die Zahl ändern.</translation>
    </message>
    <message>
      <source>Scan or touch a reason.</source>
      <translation>Grund scannen oder antippen.</translation>
    </message>
    <message>
      <source>Scan or touch the reason.</source>
      <translation>Den Grund scannen oder berühren.</translation>
    </message>
    <message>
      <source>Scan or touch your badge.</source>
      <translation>Ausweis scannen oder berühren.</translation>
    </message>
    <message>
      <source>Scan pack {pack} next.</source>
      <translation>Als Nächstes Paket {pack} scannen.</translation>
    </message>
    <message>
      <source>Scan packs onto it first.</source>
      <translation>Erst Pakete darauf scannen.</translation>
    </message>
    <message>
      <source>Scan packs onto it.</source>
      <translation>Pakete darauf scannen.</translation>
    </message>
    <message>
      <source>Scan that, or touch its row: it comes up when its parts are there.</source>
      <translation>Diesen scannen oder seine Zeile berühren: er kommt, wenn seine Teile da sind.</translation>
    </message>
    <message>
      <source>Scan the bit or touch its row.</source>
      <translation>Fräser scannen oder Zeile berühren.</translation>
    </message>
    <message>
      <source>Scan the bit that broke.</source>
      <translation>Den gebrochenen Fräser scannen.</translation>
    </message>
    <message>
      <source>Scan the card again.</source>
      <translation>Karte noch einmal scannen.</translation>
    </message>
    <message>
      <source>Scan the card of bit {bit} at that router instead.</source>
      <translation>Stattdessen dort die Karte von Fräser {bit} scannen.</translation>
    </message>
    <message>
      <source>Scan the card once more, or ask who owns the database for another.</source>
      <translation>Scanne die Karte noch einmal, oder frag, wem die Datenbank gehört, nach einer anderen.</translation>
    </message>
    <message>
      <source>Scan the card under the master.</source>
      <translation>Die Karte unter dem Muster scannen.</translation>
    </message>
    <message>
      <source>Scan the cart's card first.</source>
      <translation>Erst die Karte des Wagens scannen.</translation>
    </message>
    <message>
      <source>Scan the digit cards first.</source>
      <translation>Erst die Ziffernkarten scannen.</translation>
    </message>
    <message>
      <source>Scan the label again.</source>
      <translation>Etikett noch einmal scannen.</translation>
    </message>
    <message>
      <source>Scan the lot of the next sheet.</source>
      <translation>Charge der nächsten Platte scannen.</translation>
    </message>
    <message>
      <source>Scan the lot of the sheet, measure it.</source>
      <translation>Charge der Platte scannen, Platte messen.</translation>
    </message>
    <message>
      <source>Scan the lot's code.</source>
      <translation>Code der Charge scannen.</translation>
    </message>
    <message>
      <source>Scan the mailer's card, or touch a row.</source>
      <translation>Karte der Versandtasche scannen oder eine Zeile berühren.</translation>
    </message>
    <message>
      <source>Scan the next piece of work.</source>
      <translation>Nächste Arbeit scannen.</translation>
    </message>
    <message>
      <source>Scan the next traveller, or go on as the screen says.</source>
      <translation>Scann die nächste Laufkarte, oder mach weiter, wie der Bildschirm sagt.</translation>
    </message>
    <message>
      <source>Scan the next traveller.</source>
      <translation>Nächste Laufkarte scannen.</translation>
    </message>
    <message>
      <source>Scan the order's card, or touch its pack.</source>
      <translation>Karte des Auftrags scannen oder sein Paket berühren.</translation>
    </message>
    <message>
      <source>Scan the pack's label or a card, touch a row, or type its number.</source>
      <translation>Etikett des Pakets oder eine Karte scannen, Zeile berühren oder Nummer eintippen.</translation>
    </message>
    <message>
      <source>Scan the pack.</source>
      <translation>Paket scannen.</translation>
    </message>
    <message>
      <source>Scan the part's card at the rack.</source>
      <translation>Karte des Teils am Regal scannen.</translation>
    </message>
    <message>
      <source>Scan the part's card, or enter another number.</source>
      <translation>Karte des Teils scannen, oder andere Zahl.</translation>
    </message>
    <message>
      <source>Scan the part's card.</source>
      <translation>Karte des Teils scannen.</translation>
    </message>
    <message>
      <source>Scan the reason for overruling it.</source>
      <translation>Grund scannen, warum es zugelassen wird.</translation>
    </message>
    <message>
      <source>Scan the router's code first.</source>
      <translation>Erst den Code der Fräse scannen.</translation>
    </message>
    <message>
      <source>Scan the slip of a sheet, or its traveller.</source>
      <translation>Scann den Abschnitt einer Platte oder ihre Laufkarte.</translation>
    </message>
    <message>
      <source>Scan the traveller again.</source>
      <translation>Laufkarte noch einmal scannen.</translation>
    </message>
    <message>
      <source>Scan what it came with, or count it at its rack place.</source>
      <translation>Scanne, womit es kam, oder zähle es an seinem Regalplatz.</translation>
    </message>
    <message>
      <source>Scan your badge</source>
      <translation>Ausweis scannen</translation>
    </message>
    <message>
      <source>Scan your badge first.</source>
      <translation>Erst den Ausweis scannen.</translation>
    </message>
    <message>
      <source>Scan your badge to begin.</source>
      <translation>Zum Anfangen Ausweis scannen.</translation>
    </message>
    <message>
      <source>Scan your badge.</source>
      <translation>Ausweis scannen.</translation>
    </message>
    <message>
      <source>Scan your own badge.</source>
      <translation>Scanne deinen eigenen Ausweis.</translation>
    </message>
    <message>
      <source>Scan your work first.</source>
      <translation>Zuerst die Arbeit scannen.</translation>
    </message>
    <message>
      <source>Scan your work.</source>
      <translation>Arbeit scannen.</translation>
    </message>
    <message>
      <source>Scan “Off the cart”, then the pack; packing opens it.</source>
      <translation>„Vom Wagen“ scannen, dann das Paket; beim Packen wird es geöffnet.</translation>
    </message>
    <message>
      <source>Scan “Onto the cart”, then the pack; or leave it here.</source>
      <translation>„Auf den Wagen“ scannen, dann das Paket; oder hier lassen.</translation>
    </message>
    <message>
      <source>Scan, touch or type a {kind} to add it.</source>
      <translation>{kind} scannen, berühren oder tippen, um es hinzuzufügen.</translation>
    </message>
    <message>
      <source>Scan, type or touch one</source>
      <translation>Eins scannen, tippen oder berühren</translation>
    </message>
    <message>
      <source>Search</source>
      <translation>Suchen</translation>
    </message>
    <message>
      <source>Second operation</source>
      <translation>Zweiter Arbeitsgang</translation>
    </message>
    <message>
      <source>Send it short</source>
      <translation>Unvollständig schicken</translation>
    </message>
    <message>
      <source>Send it short, or ask for a sheet.</source>
      <translation>Unvollständig senden oder eine Platte erbitten.</translation>
    </message>
    <message>
      <source>Sep</source>
      <translation>09.</translation>
    </message>
    <message>
      <source>Set another folder under “This shop”.</source>
      <translation>Unter „Diese Werkstatt“ einen anderen Ordner setzen.</translation>
    </message>
    <message>
      <source>Set it in the office.</source>
      <translation>Im Büro setzen.</translation>
    </message>
    <message>
      <source>Set its folder right in the office.</source>
      <translation>Den Ordner im Büro richtig setzen.</translation>
    </message>
    <message>
      <source>Set the PC's date, then do it again.</source>
      <translation>Das Datum des PCs einstellen, dann noch einmal.</translation>
    </message>
    <message>
      <source>Set the sheet on its pins, hold it down, tick it.</source>
      <translation>Platte auf die Passstifte setzen, spannen, abhaken.</translation>
    </message>
    <message>
      <source>Set up the shop</source>
      <translation>Werkstatt einrichten</translation>
    </message>
    <message>
      <source>Set zero before the next sheet.</source>
      <translation>Vor der nächsten Platte Nullpunkt setzen.</translation>
    </message>
    <message>
      <source>Set zero, then go on: {left} m left, {need} m needed.</source>
      <translation>Nullpunkt setzen, dann weiter: noch {left} m, gebraucht {need} m.</translation>
    </message>
    <message>
      <source>Set zero, tick it.</source>
      <translation>Nullpunkt setzen und abhaken.</translation>
    </message>
    <message>
      <source>Set zero. Its first sheet is measured.</source>
      <translation>Nullpunkt setzen. Seine erste Platte wird gemessen.</translation>
    </message>
    <message>
      <source>Set {n}</source>
      <translation>{n} setzen</translation>
    </message>
    <message>
      <source>Set {n} of {all} is next.</source>
      <translation>Satz {n} von {all} ist der nächste.</translation>
    </message>
    <message>
      <source>Set {n} of {all}: {product}</source>
      <translation>Satz {n} von {all}: {product}</translation>
    </message>
    <message>
      <source>Setting #{number} moves no offset here; G10 L2 does.</source>
      <translation>#{number} zu setzen verschiebt hier nichts; das tut G10 L2.</translation>
    </message>
    <message>
      <source>Settle it</source>
      <translation>Klären</translation>
    </message>
    <message>
      <source>Settled today</source>
      <translation>Heute geklärt</translation>
    </message>
    <message>
      <source>Settled: {booked} of {meant} {booked|is|are} booked now</source>
      <translation>Geregelt: {booked} von {meant} {booked|ist|sind} jetzt gebucht</translation>
    </message>
    <message>
      <source>Settled: {how}</source>
      <translation>Geregelt: {how}</translation>
    </message>
    <message>
      <source>Settled: {how}, {n} of them</source>
      <translation>Erledigt: {how}, {n} davon</translation>
    </message>
    <message>
      <source>Settling is supervisor's work</source>
      <translation>Klären ist Sache der Aufsicht</translation>
    </message>
    <message>
      <source>Several orders on one walk</source>
      <translation>Mehrere Aufträge auf einem Gang</translation>
    </message>
    <message>
      <source>Shared</source>
      <translation>Geteilt</translation>
    </message>
    <message>
      <source>Sharing tries again by itself.</source>
      <translation>Das Teilen versucht es von selbst wieder.</translation>
    </message>
    <message>
      <source>Sheet</source>
      <translation>Platte</translation>
    </message>
    <message>
      <source>Sheet from lot {lot}</source>
      <translation>Platte aus Charge {lot}</translation>
    </message>
    <message>
      <source>Sheet is held down</source>
      <translation>Platte ist niedergehalten</translation>
    </message>
    <message>
      <source>Sheet spoiled</source>
      <translation>Platte ist Ausschuss</translation>
    </message>
    <message>
      <source>Sheet {kg} kg: two people or a lift.</source>
      <translation>Platte {kg} kg: zu zweit oder mit Hebehilfe.</translation>
    </message>
    <message>
      <source>Sheet {kg} kg: two people or a lift. Gloves on for it, off at the spindle.</source>
      <translation>Platte {kg} kg: zu zweit oder mit Hebehilfe. Handschuhe dafür an, an der Spindel aus.</translation>
    </message>
    <message>
      <source>Sheet {n} is a first-off: {why}</source>
      <translation>Platte {n} ist ein Erstteil: {why}</translation>
    </message>
    <message>
      <source>Sheet {n} is next: run {run} of {of}</source>
      <translation>Platte {n} ist die nächste: Durchgang {run} von {of}</translation>
    </message>
    <message>
      <source>Sheet {n} is off the bed</source>
      <translation>Platte {n} ist vom Tisch</translation>
    </message>
    <message>
      <source>Sheet {n} is spoiled</source>
      <translation>Platte {n} ist Ausschuss</translation>
    </message>
    <message>
      <source>Sheet {n} is the last of batch {batch}</source>
      <translation>Platte {n} ist die letzte von Los {batch}</translation>
    </message>
    <message>
      <source>Sheet {n} of batch</source>
      <translation>Platte {n} von Los</translation>
    </message>
    <message>
      <source>Sheet {n} of batch {batch} is not cut yet</source>
      <translation>Platte {n} von Los {batch} ist noch nicht gefräst</translation>
    </message>
    <message>
      <source>Sheet {n} of batch {batch} is on it.</source>
      <translation>Platte {n} von Los {batch} liegt darauf.</translation>
    </message>
    <message>
      <source>Sheet {n} of batch {batch} is on the bed</source>
      <translation>Platte {n} von Los {batch} liegt auf dem Tisch</translation>
    </message>
    <message>
      <source>Sheet {n} of batch {batch} off {router}, {minutes} min</source>
      <translation>Platte {n} von Los {batch} von {router} ab, {minutes} min</translation>
    </message>
    <message>
      <source>Sheet {n} of batch {batch}: cut {at}, {state}</source>
      <translation>Platte {n} von Los {batch}: gefräst {at}, {state}</translation>
    </message>
    <message>
      <source>Sheet {n} on its pins: run {run} of {of}.</source>
      <translation>Platte {n} auf die Passstifte: Durchgang {run} von {of}.</translation>
    </message>
    <message>
      <source>Sheet {n}: run {run} of {of} is done</source>
      <translation>Platte {n}: Durchgang {run} von {of} ist fertig</translation>
    </message>
    <message>
      <source>Sheet {n}: {why}</source>
      <translation>Platte {n}: {why}</translation>
    </message>
    <message>
      <source>Sheet {sheets} of batch {batch} in hand</source>
      <translation>Platte {sheets} von Los {batch} in Arbeit</translation>
    </message>
    <message>
      <source>Sheet {sheet} came off {at} by worker {by}: next sheet, or a mistake?</source>
      <translation>Platte {sheet} kam {at} von Mitarbeiter {by} vom Tisch: nächste Platte oder ein Versehen?</translation>
    </message>
    <message>
      <source>Sheet {sheet} is already off the bed, {at} by worker {by}</source>
      <translation>Platte {sheet} ist schon vom Tisch, {at} von Mitarbeiter {by}</translation>
    </message>
    <message>
      <source>Sheet {sheet} is being cut</source>
      <translation>Platte {sheet} wird gefräst</translation>
    </message>
    <message>
      <source>Sheet {sheet} is loaded already, {at} by worker {by}</source>
      <translation>Platte {sheet} ist schon aufgelegt, {at} von Mitarbeiter {by}</translation>
    </message>
    <message>
      <source>Sheet {sheet} is not off the bed yet</source>
      <translation>Platte {sheet} ist noch nicht vom Tisch</translation>
    </message>
    <message>
      <source>Sheet {sheet} is off the bed: {count} {count|part|parts}</source>
      <translation>Platte {sheet} ist vom Tisch: {count} {count|Teil|Teile}</translation>
    </message>
    <message>
      <source>Sheet {sheet} is on the bed, not {slip}</source>
      <translation>Platte {sheet} liegt auf dem Tisch, nicht {slip}</translation>
    </message>
    <message>
      <source>Sheet {sheet} loaded {at} by worker {by}: next sheet, or a mistake?</source>
      <translation>Platte {sheet} aufgelegt {at} von Mitarbeiter {by}: nächste Platte oder ein Versehen?</translation>
    </message>
    <message>
      <source>Sheet {sheet} of batch {batch} is on the bed</source>
      <translation>Platte {sheet} von Los {batch} liegt auf dem Tisch</translation>
    </message>
    <message>
      <source>Sheet {sheet} spoiled: {kept} whole, {lost} lost</source>
      <translation>Platte {sheet} Ausschuss: {kept} heil, {lost} verloren</translation>
    </message>
    <message>
      <source>Sheet {sheet} started at {at}</source>
      <translation>Platte {sheet} begonnen um {at}</translation>
    </message>
    <message>
      <source>Sheet {sheet} started {at}, {minutes} min expected</source>
      <translation>Platte {sheet} begonnen {at}, {minutes} min erwartet</translation>
    </message>
    <message>
      <source>Sheet {sheet} was loaded {at} by worker {by}</source>
      <translation>Platte {sheet} wurde {at} von Mitarbeiter {by} aufgelegt</translation>
    </message>
    <message>
      <source>Sheet {sheet}, run {run}, started at {at}</source>
      <translation>Platte {sheet}, Durchgang {run}, begonnen um {at}</translation>
    </message>
    <message>
      <source>Sheet {sheet}: {n} {part} whole</source>
      <translation>Platte {sheet}: {n} {part} ganz</translation>
    </message>
    <message>
      <source>Sheets in the store</source>
      <translation>Platten im Lager</translation>
    </message>
    <message>
      <source>Sheets not made</source>
      <translation>Nicht gemachte Platten</translation>
    </message>
    <message>
      <source>Sheets {sheets} of batch {batch} in hand</source>
      <translation>Platten {sheets} von Los {batch} in Arbeit</translation>
    </message>
    <message>
      <source>Sheets, slips and traveller to {router}.</source>
      <translation>Platten, Abschnitte und Laufkarte zu {router}.</translation>
    </message>
    <message>
      <source>Shop today</source>
      <translation>Werkstatt heute</translation>
    </message>
    <message>
      <source>Shop's health</source>
      <translation>Zustand der Werkstatt</translation>
    </message>
    <message>
      <source>Show the flow</source>
      <translation>Fluss zeigen</translation>
    </message>
    <message>
      <source>Show the path</source>
      <translation>Weg zeigen</translation>
    </message>
    <message>
      <source>Show them to the supervisor.</source>
      <translation>Der Aufsicht zeigen.</translation>
    </message>
    <message>
      <source>Show what needs a look</source>
      <translation>Zeigen, was anzusehen ist</translation>
    </message>
    <message>
      <source>Sign it, both of you.</source>
      <translation>Beide unterschreiben.</translation>
    </message>
    <message>
      <source>Signed out; what is in hand stays here</source>
      <translation>Abgemeldet; was in Arbeit ist, bleibt hier</translation>
    </message>
    <message>
      <source>Slip and parts to popping. Sheet {n} is next.</source>
      <translation>Abschnitt und Teile zum Ausbrechen. Als Nächstes Platte {n}.</translation>
    </message>
    <message>
      <source>Slip and parts to popping. The batch is cancelled.</source>
      <translation>Abschnitt und Teile zum Ausbrechen. Das Los ist storniert.</translation>
    </message>
    <message>
      <source>Slip and parts to popping. The batch is cut.</source>
      <translation>Abschnitt und Teile zum Ausbrechen. Das Los ist gefräst.</translation>
    </message>
    <message>
      <source>Slip and parts to popping. The rest runs on another router.</source>
      <translation>Abschnitt und Teile zum Ausbrechen. Der Rest läuft auf einer anderen Fräse.</translation>
    </message>
    <message>
      <source>Slip to popping. First-off check before sheet {n}.</source>
      <translation>Abschnitt zum Ausbrechen. Erstteil prüfen vor Platte {n}.</translation>
    </message>
    <message>
      <source>Slips of batch {batch}, copy {copy}</source>
      <translation>Abschnitte von Los {batch}, Exemplar {copy}</translation>
    </message>
    <message>
      <source>Small pieces without tabs come loose and may fly: they are drawn in red. Give them tabs.</source>
      <translation>Kleine Teile ohne Stege werden lose und können fliegen: Sie sind rot gezeichnet. Gib ihnen Stege.</translation>
    </message>
    <message>
      <source>Some of these orders were put down</source>
      <translation>Einige dieser Aufträge wurden weggelegt</translation>
    </message>
    <message>
      <source>Someone else</source>
      <translation>Jemand anders</translation>
    </message>
    <message>
      <source>Something came back</source>
      <translation>Etwas kam zurück</translation>
    </message>
    <message>
      <source>Something is wrong in the program; nothing was counted</source>
      <translation>Im Programm ist etwas falsch; nichts wurde gezählt</translation>
    </message>
    <message>
      <source>Sounds are off now</source>
      <translation>Töne sind jetzt aus</translation>
    </message>
    <message>
      <source>Sounds are on now</source>
      <translation>Töne sind jetzt an</translation>
    </message>
    <message>
      <source>Sounds on or off</source>
      <translation>Töne an oder aus</translation>
    </message>
    <message>
      <source>Speed</source>
      <translation>Tempo</translation>
    </message>
    <message>
      <source>Spindle at rest first. Edges cut, splinters stick: gloves for sheet and offcuts.</source>
      <translation>Erst steht die Spindel. Kanten schneiden, Splitter stechen: Handschuhe für Platte und Reste.</translation>
    </message>
    <message>
      <source>Spindle at rest. Cut its tabs away from the hand; mind splinters and edges.</source>
      <translation>Spindel steht. Stege von der Hand weg schneiden; auf Splitter und Kanten achten.</translation>
    </message>
    <message>
      <source>Spindle isolated? Then put a new bit in and scan it.</source>
      <translation>Spindel gesichert? Dann neuen Fräser einsetzen und scannen.</translation>
    </message>
    <message>
      <source>Spindle switched off and locked first.</source>
      <translation>Zuerst die Spindel ausschalten und sichern.</translation>
    </message>
    <message>
      <source>Spindle switched off and locked first. The bit is hot, its edges are sharp.</source>
      <translation>Erst Spindel aus und gesichert. Der Fräser ist heiß, seine Schneiden sind scharf.</translation>
    </message>
    <message>
      <source>Split a part off</source>
      <translation>Ein Teil abtrennen</translation>
    </message>
    <message>
      <source>Split it: the child has its own paper.</source>
      <translation>Aufteilen: das neue Los hat eigenes Papier.</translation>
    </message>
    <message>
      <source>Spoilboard of {router} resurfaced</source>
      <translation>Opferplatte von {router} abgeplant</translation>
    </message>
    <message>
      <source>Spoilboard resurfaced</source>
      <translation>Opferplatte abgeplant</translation>
    </message>
    <message>
      <source>Spoilboard: {n} {n|pass|passes}</source>
      <translation>Opferplatte: {n} {n|Durchgang|Durchgänge}</translation>
    </message>
    <message>
      <source>Spoiled</source>
      <translation>Ausschuss</translation>
    </message>
    <message>
      <source>Spread</source>
      <translation>Streuung</translation>
    </message>
    <message>
      <source>Start a sheet first.</source>
      <translation>Erst eine Platte beginnen.</translation>
    </message>
    <message>
      <source>Start of day</source>
      <translation>Tagesbeginn</translation>
    </message>
    <message>
      <source>Start of day done</source>
      <translation>Tagesbeginn erledigt</translation>
    </message>
    <message>
      <source>Start of day done on {router}</source>
      <translation>Tagesbeginn auf {router} erledigt</translation>
    </message>
    <message>
      <source>Start of day is already done on {router}</source>
      <translation>Tagesbeginn auf {router} ist schon erledigt</translation>
    </message>
    <message>
      <source>Start of day is due on {router}</source>
      <translation>Tagesbeginn auf {router} ist fällig</translation>
    </message>
    <message>
      <source>Start sheet {n}</source>
      <translation>Platte {n} beginnen</translation>
    </message>
    <message>
      <source>Start sheet {n}, run {run}</source>
      <translation>Platte {n}, Durchgang {run} starten</translation>
    </message>
    <message>
      <source>Start the sheet</source>
      <translation>Platte beginnen</translation>
    </message>
    <message>
      <source>Start the sheet first, or look at the other router.</source>
      <translation>Erst die Platte beginnen oder die andere Fräse ansehen.</translation>
    </message>
    <message>
      <source>Station</source>
      <translation>Station</translation>
    </message>
    <message>
      <source>Station {id} held sharing up, {at}: is its password in wrong hands?</source>
      <translation>Station {id} hielt das Teilen auf, {at}: Ist ihr Passwort in falschen Händen?</translation>
    </message>
    <message>
      <source>Station {id} is at work</source>
      <translation>Station {id} arbeitet</translation>
    </message>
    <message>
      <source>Station {id} is silent since {day}</source>
      <translation>Station {id} schweigt seit {day}</translation>
    </message>
    <message>
      <source>Station {id} makes no backup: {why}</source>
      <translation>Station {id} macht keine Sicherung: {why}</translation>
    </message>
    <message>
      <source>Station {id} went on without its own work of {at}: an older folder, or two PCs with one?</source>
      <translation>Station {id} hat ohne ihre eigene Arbeit vom {at} weitergemacht: ein älterer Ordner, oder zwei PCs mit einem?</translation>
    </message>
    <message>
      <source>Station {id}: its program {old} is older than {new}</source>
      <translation>Station {id}: ihr Programm {old} ist älter als {new}</translation>
    </message>
    <message>
      <source>Station {id}: the disk is nearly full, {n} MB left</source>
      <translation>Station {id}: Die Festplatte ist fast voll, noch {n} MB</translation>
    </message>
    <message>
      <source>Station {id}: {n} wrong PINs, the newest of {at}</source>
      <translation>Station {id}: {n} falsche PINs, die neueste {at}</translation>
    </message>
    <message>
      <source>Station {station} joins the shop</source>
      <translation>Station {station} tritt der Werkstatt bei</translation>
    </message>
    <message>
      <source>Station {station} packs order {order}</source>
      <translation>Station {station} packt Auftrag {order}</translation>
    </message>
    <message>
      <source>Still missing: {n}</source>
      <translation>Es fehlt noch: {n}</translation>
    </message>
    <message>
      <source>Still to see come first</source>
      <translation>Noch zu Sehendes kommt zuerst</translation>
    </message>
    <message>
      <source>Stop copying</source>
      <translation>Kopieren anhalten</translation>
    </message>
    <message>
      <source>Stop looking</source>
      <translation>Durchsehen anhalten</translation>
    </message>
    <message>
      <source>Stop over after {minutes} min</source>
      <translation>Halt nach {minutes} min vorbei</translation>
    </message>
    <message>
      <source>Stop reading</source>
      <translation>Lesen anhalten</translation>
    </message>
    <message>
      <source>Stop. {what}</source>
      <translation>Halt. {what}</translation>
    </message>
    <message>
      <source>Stopped since</source>
      <translation>Steht seit</translation>
    </message>
    <message>
      <source>Stopped since {at} already</source>
      <translation>Steht schon seit {at}</translation>
    </message>
    <message>
      <source>Sun</source>
      <translation>So</translation>
    </message>
    <message>
      <source>Supervisor {id}</source>
      <translation>Aufsicht {id}</translation>
    </message>
    <message>
      <source>Supervisor's work</source>
      <translation>Sache der Aufsicht</translation>
    </message>
    <message>
      <source>Supervisor's work asks for a PIN again.</source>
      <translation>Sache der Aufsicht: PIN wird wieder gefragt.</translation>
    </message>
    <message>
      <source>Supervisor: scan your badge, then enter your PIN.</source>
      <translation>Aufsicht: Ausweis scannen, dann PIN eingeben.</translation>
    </message>
    <message>
      <source>Take an order in hand first.</source>
      <translation>Zuerst einen Auftrag in die Hand nehmen.</translation>
    </message>
    <message>
      <source>Take another one, or take it out there first.</source>
      <translation>Andere nehmen oder dort erst herausnehmen.</translation>
    </message>
    <message>
      <source>Take another one.</source>
      <translation>Andere nehmen.</translation>
    </message>
    <message>
      <source>Take another, or bring it back in the office: “in use” on its page.</source>
      <translation>Nimm etwas anderes, oder hol es im Büro zurück: „in Gebrauch“ auf seiner Seite.</translation>
    </message>
    <message>
      <source>Take another. Only if that station is out of use a supervisor takes it over.</source>
      <translation>Anderen nehmen. Nur wenn jene Station ausfällt, übernimmt die Aufsicht.</translation>
    </message>
    <message>
      <source>Take back {batch}</source>
      <translation>{batch} zurücknehmen</translation>
    </message>
    <message>
      <source>Take batch {batch}</source>
      <translation>Los {batch} nehmen</translation>
    </message>
    <message>
      <source>Take care</source>
      <translation>Vorsicht</translation>
    </message>
    <message>
      <source>Take care: read all</source>
      <translation>Vorsicht: alles lesen</translation>
    </message>
    <message>
      <source>Take care: {at}</source>
      <translation>Vorsicht: {at}</translation>
    </message>
    <message>
      <source>Take it along the rack; scan each part there.</source>
      <translation>Damit am Regal entlanggehen; dort jedes Teil scannen.</translation>
    </message>
    <message>
      <source>Take it back, or leave it.</source>
      <translation>Zurücknehmen oder lassen.</translation>
    </message>
    <message>
      <source>Take it from a later order</source>
      <translation>Aus einem späteren Auftrag nehmen</translation>
    </message>
    <message>
      <source>Take it from the rack.</source>
      <translation>Aus dem Regal nehmen.</translation>
    </message>
    <message>
      <source>Take it in</source>
      <translation>Übernehmen</translation>
    </message>
    <message>
      <source>Take it off at another PC.</source>
      <translation>An einem anderen PC abladen.</translation>
    </message>
    <message>
      <source>Take it off at the cart, then scan it here.</source>
      <translation>Am Wagen abladen, dann hier scannen.</translation>
    </message>
    <message>
      <source>Take it off first, then take this batch.</source>
      <translation>Erst abnehmen, dann dieses Los nehmen.</translation>
    </message>
    <message>
      <source>Take it off first.</source>
      <translation>Erst abnehmen.</translation>
    </message>
    <message>
      <source>Take it off the bed first.</source>
      <translation>Erst vom Tisch nehmen.</translation>
    </message>
    <message>
      <source>Take it off the bed first: scan its slip.</source>
      <translation>Erst vom Tisch nehmen: Abschnitt scannen.</translation>
    </message>
    <message>
      <source>Take it out</source>
      <translation>Herausnehmen</translation>
    </message>
    <message>
      <source>Take it to its next place.</source>
      <translation>An den nächsten Platz bringen.</translation>
    </message>
    <message>
      <source>Take it, or touch “Part missing” to count.</source>
      <translation>Nehmen oder „Teil fehlt“ berühren und zählen.</translation>
    </message>
    <message>
      <source>Take its parts first.</source>
      <translation>Erst die Teile nehmen.</translation>
    </message>
    <message>
      <source>Take its traveller to the router that does.</source>
      <translation>Die Laufkarte zu der Fräse bringen, die es kann.</translation>
    </message>
    <message>
      <source>Take off</source>
      <translation>Abnehmen</translation>
    </message>
    <message>
      <source>Take one back with “−” first.</source>
      <translation>Erst eins mit „−“ zurücknehmen.</translation>
    </message>
    <message>
      <source>Take one from the shelf.</source>
      <translation>Eines aus dem Vorrat nehmen.</translation>
    </message>
    <message>
      <source>Take pack {pack} back to packing.</source>
      <translation>Paket {pack} zurück zum Packen bringen.</translation>
    </message>
    <message>
      <source>Take slip {sheet}.</source>
      <translation>Abschnitt {sheet} nehmen.</translation>
    </message>
    <message>
      <source>Take the chosen batch back</source>
      <translation>Gewähltes Los zurücknehmen</translation>
    </message>
    <message>
      <source>Take the next batch.</source>
      <translation>Nächstes Los nehmen.</translation>
    </message>
    <message>
      <source>Take the next order</source>
      <translation>Nächsten Auftrag nehmen</translation>
    </message>
    <message>
      <source>Take the next order.</source>
      <translation>Nächsten Auftrag nehmen.</translation>
    </message>
    <message>
      <source>Take the next part.</source>
      <translation>Nächstes Teil nehmen.</translation>
    </message>
    <message>
      <source>Take the next part. A supervisor lets them go on.</source>
      <translation>Nächstes Teil nehmen. Die Aufsicht lässt sie weitergehen.</translation>
    </message>
    <message>
      <source>Take the one shown.</source>
      <translation>Die gezeigte nehmen.</translation>
    </message>
    <message>
      <source>Take the other {n}; a supervisor lets the rest go on.</source>
      <translation>Die anderen {n} nehmen; die Aufsicht lässt den Rest weitergehen.</translation>
    </message>
    <message>
      <source>Take the rest and close the pack.</source>
      <translation>Den Rest nehmen und Paket schließen.</translation>
    </message>
    <message>
      <source>Take the suggested minimum</source>
      <translation>Den vorgeschlagenen Mindestbestand übernehmen</translation>
    </message>
    <message>
      <source>Take this line out</source>
      <translation>Diese Zeile streichen</translation>
    </message>
    <message>
      <source>Take what goes in the first one.</source>
      <translation>Nimm, was ins erste kommt.</translation>
    </message>
    <message>
      <source>Taken as</source>
      <translation>Übernommen als</translation>
    </message>
    <message>
      <source>Taken back: {what}</source>
      <translation>Zurückgenommen: {what}</translation>
    </message>
    <message>
      <source>Taken in: {new} new, {changed} changed</source>
      <translation>Übernommen: {new} neu, {changed} geändert</translation>
    </message>
    <message>
      <source>Tear a slip off for each sheet: it goes with the parts.</source>
      <translation>Für jede Platte einen Abschnitt abreißen: er geht mit den Teilen.</translation>
    </message>
    <message>
      <source>Tear it off. Order {order} is packed anew.</source>
      <translation>Abreißen. Auftrag {order} wird neu gepackt.</translation>
    </message>
    <message>
      <source>That PIN is not right</source>
      <translation>Diese PIN stimmt nicht</translation>
    </message>
    <message>
      <source>That batch is not held</source>
      <translation>Dieses Los ist nicht gesperrt</translation>
    </message>
    <message>
      <source>That bit is not in {router}</source>
      <translation>Dieser Fräser ist nicht in {router}</translation>
    </message>
    <message>
      <source>That cannot be made sure now: the shop's database does not answer</source>
      <translation>Das lässt sich jetzt nicht sichern: die Datenbank der Werkstatt antwortet nicht</translation>
    </message>
    <message>
      <source>That cart is not at the door</source>
      <translation>Dieser Wagen ist nicht an der Tür</translation>
    </message>
    <message>
      <source>That is beside the sheet</source>
      <translation>Das ist neben der Platte</translation>
    </message>
    <message>
      <source>That is it</source>
      <translation>Das ist es</translation>
    </message>
    <message>
      <source>That is no answer</source>
      <translation>Das ist keine Antwort</translation>
    </message>
    <message>
      <source>That is no choice here</source>
      <translation>Das steht hier nicht zur Wahl</translation>
    </message>
    <message>
      <source>That is no code of this shop</source>
      <translation>Das ist kein Code dieser Werkstatt</translation>
    </message>
    <message>
      <source>That is no code of this shop, or was read wrong</source>
      <translation>Das ist kein Code dieser Werkstatt, oder falsch gelesen</translation>
    </message>
    <message>
      <source>That is no cut file</source>
      <translation>Das ist keine Fräsdatei</translation>
    </message>
    <message>
      <source>That is no file of this PC</source>
      <translation>Das ist keine Datei dieses PCs</translation>
    </message>
    <message>
      <source>That is no name</source>
      <translation>Das ist kein Name</translation>
    </message>
    <message>
      <source>That is no number of sheets</source>
      <translation>Das ist keine Plattenzahl</translation>
    </message>
    <message>
      <source>That is no reason for a sheet</source>
      <translation>Das ist kein Grund für eine Platte</translation>
    </message>
    <message>
      <source>That is no such length</source>
      <translation>Das ist keine solche Länge</translation>
    </message>
    <message>
      <source>That is no thickness</source>
      <translation>Das ist keine Dicke</translation>
    </message>
    <message>
      <source>That is no worker</source>
      <translation>Das ist kein Mitarbeiter</translation>
    </message>
    <message>
      <source>That is not asked for after this stop</source>
      <translation>Nach diesem Halt wird das nicht gefragt</translation>
    </message>
    <message>
      <source>That is not measured here</source>
      <translation>Das wird hier nicht gemessen</translation>
    </message>
    <message>
      <source>That is settled already</source>
      <translation>Das ist schon geklärt</translation>
    </message>
    <message>
      <source>That is typed</source>
      <translation>Das wird getippt</translation>
    </message>
    <message>
      <source>That is {name}</source>
      <translation>Das ist {name}</translation>
    </message>
    <message>
      <source>That order cannot be cancelled any more</source>
      <translation>Dieser Auftrag lässt sich nicht mehr stornieren</translation>
    </message>
    <message>
      <source>That order is not in hand here</source>
      <translation>Dieser Auftrag ist hier nicht in Arbeit</translation>
    </message>
    <message>
      <source>That order is not open</source>
      <translation>Dieser Auftrag ist nicht offen</translation>
    </message>
    <message>
      <source>That pack is not on this cart's list</source>
      <translation>Dieses Paket steht nicht auf der Liste dieses Wagens</translation>
    </message>
    <message>
      <source>That pack is on no cart</source>
      <translation>Dieses Paket ist auf keinem Wagen</translation>
    </message>
    <message>
      <source>That part is not on this sheet</source>
      <translation>Dieses Teil ist nicht auf dieser Platte</translation>
    </message>
    <message>
      <source>That sheet is settled by worker {by}: {how}</source>
      <translation>Diese Platte ist durch Mitarbeiter {by} erledigt: {how}</translation>
    </message>
    <message>
      <source>That stays: it is not taken back here</source>
      <translation>Das bleibt: hier wird es nicht zurückgenommen</translation>
    </message>
    <message>
      <source>That text is revision {letter} already</source>
      <translation>Dieser Text ist schon Revision {letter}</translation>
    </message>
    <message>
      <source>That was not counted, so it cannot be taken back</source>
      <translation>Das wurde nicht gezählt, darum geht es nicht zurück</translation>
    </message>
    <message>
      <source>That was taken back already</source>
      <translation>Das wurde schon zurückgenommen</translation>
    </message>
    <message>
      <source>That {kind} is not for this step</source>
      <translation>Das passt nicht zu diesem Schritt: {kind}</translation>
    </message>
    <message>
      <source>The PIN of worker {id} was set anew at station {station} without the old one</source>
      <translation>Die PIN von Mitarbeiter {id} wurde an Station {station} ohne die alte neu gesetzt</translation>
    </message>
    <message>
      <source>The arc's ends lie {apart} mm further apart than its radius reaches.</source>
      <translation>Die Enden des Bogens liegen {apart} mm weiter auseinander, als sein Radius reicht.</translation>
    </message>
    <message>
      <source>The arc's radii differ by {off} mm; its ends do not fit its centre.</source>
      <translation>Die Radien des Bogens weichen um {off} mm ab; seine Enden passen nicht zur Mitte.</translation>
    </message>
    <message>
      <source>The batch is cut: nothing else waits for this router.</source>
      <translation>Das Los ist gefräst: Für diese Fräse wartet nichts mehr.</translation>
    </message>
    <message>
      <source>The batch is cut: take the next one.</source>
      <translation>Das Los ist gefräst: nimm das nächste.</translation>
    </message>
    <message>
      <source>The batches</source>
      <translation>Die Lose</translation>
    </message>
    <message>
      <source>The bed is free</source>
      <translation>Der Tisch ist frei</translation>
    </message>
    <message>
      <source>The bed is not clear yet</source>
      <translation>Der Tisch ist noch nicht frei</translation>
    </message>
    <message>
      <source>The bit comes too near there</source>
      <translation>Dort kommt der Fräser zu nahe</translation>
    </message>
    <message>
      <source>The bit is changed while it is in the sheet. Raise it before.</source>
      <translation>Der Fräser wird in der Platte gewechselt. Vorher anheben.</translation>
    </message>
    <message>
      <source>The bit is not checked yet</source>
      <translation>Der Fräser ist noch nicht geprüft</translation>
    </message>
    <message>
      <source>The bit is not out of the wood yet</source>
      <translation>Der Fräser ist noch nicht aus dem Holz</translation>
    </message>
    <message>
      <source>The bit's own width cuts this tab through.</source>
      <translation>Die Breite des Fräsers selbst trennt diesen Steg durch.</translation>
    </message>
    <message>
      <source>The book is set right</source>
      <translation>Das Buch ist berichtigt</translation>
    </message>
    <message>
      <source>The card of pack {pack} is void: it was opened</source>
      <translation>Die Karte von Paket {pack} gilt nicht mehr: es wurde geöffnet</translation>
    </message>
    <message>
      <source>The cart leaves</source>
      <translation>Der Wagen fährt ab</translation>
    </message>
    <message>
      <source>The changer has a bit of {there} mm; this remark asks for {asked} mm.</source>
      <translation>Im Wechsler ist ein Fräser von {there} mm; diese Bemerkung verlangt {asked} mm.</translation>
    </message>
    <message>
      <source>The cut file is not checked yet</source>
      <translation>Die Fräsdatei ist noch nicht geprüft</translation>
    </message>
    <message>
      <source>The day so far</source>
      <translation>Der Tag bisher</translation>
    </message>
    <message>
      <source>The feed is above {most} mm/min, the router's fastest.</source>
      <translation>Der Vorschub liegt über {most} mm/min, dem schnellsten der Fräse.</translation>
    </message>
    <message>
      <source>The feed is above {most} mm/min: a zero too many, or a lost point?</source>
      <translation>Der Vorschub liegt über {most} mm/min: eine Null zu viel, oder fehlt ein Komma?</translation>
    </message>
    <message>
      <source>The feed is below zero; it is left out.</source>
      <translation>Der Vorschub ist kleiner als null; er bleibt weg.</translation>
    </message>
    <message>
      <source>The file asks for it later in the sheet: get one first.</source>
      <translation>Die Datei braucht ihn später auf der Platte: erst einen holen.</translation>
    </message>
    <message>
      <source>The file asks for {size} mm next: take that one.</source>
      <translation>Die Datei braucht als Nächstes {size} mm: diesen nehmen.</translation>
    </message>
    <message>
      <source>The file does not say how wide it is. The sizes of its parts hang on it.</source>
      <translation>Die Datei sagt nicht, wie breit er ist. Davon hängen die Maße seiner Teile ab.</translation>
    </message>
    <message>
      <source>The file does not say inch or millimetre. Say which it is.</source>
      <translation>Die Datei sagt nicht, ob Zoll oder Millimeter. Bitte sagen, was gilt.</translation>
    </message>
    <message>
      <source>The file has more than {most} million moves. Split it.</source>
      <translation>Die Datei hat mehr als {most} Millionen Bewegungen. Sie teilen.</translation>
    </message>
    <message>
      <source>The file is empty. Choose another.</source>
      <translation>Die Datei ist leer. Eine andere wählen.</translation>
    </message>
    <message>
      <source>The file is not known any more</source>
      <translation>Die Datei ist nicht mehr bekannt</translation>
    </message>
    <message>
      <source>The file is written in UTF-16. Save it as plain text.</source>
      <translation>Die Datei ist in UTF-16 geschrieben. Sie als einfachen Text speichern.</translation>
    </message>
    <message>
      <source>The file of {name} was not read yet</source>
      <translation>Die Datei von {name} ist noch nicht gelesen</translation>
    </message>
    <message>
      <source>The first sheet after it is measured.</source>
      <translation>Die erste Platte danach wird gemessen.</translation>
    </message>
    <message>
      <source>The first-off of sheet {n} is wrong</source>
      <translation>Das Erstteil von Platte {n} ist falsch</translation>
    </message>
    <message>
      <source>The handover sheet is printed</source>
      <translation>Das Übergabeblatt ist gedruckt</translation>
    </message>
    <message>
      <source>The heights of this cycle were said before G90 and G91 changed; controls differ in what they are now.</source>
      <translation>Die Höhen dieses Zyklus standen vor dem Wechsel zwischen G90 und G91; Steuerungen verstehen sie nun verschieden.</translation>
    </message>
    <message>
      <source>The history is being copied</source>
      <translation>Die Geschichte wird kopiert</translation>
    </message>
    <message>
      <source>The history is being copied already</source>
      <translation>Die Geschichte wird schon kopiert</translation>
    </message>
    <message>
      <source>The history was not copied: {why}</source>
      <translation>Die Geschichte wurde nicht kopiert: {why}</translation>
    </message>
    <message>
      <source>The hold-downs</source>
      <translation>Die Niederhalter</translation>
    </message>
    <message>
      <source>The label of pack {pack} is void: it was opened again</source>
      <translation>Das Etikett von Paket {pack} gilt nicht mehr: es wurde wieder geöffnet</translation>
    </message>
    <message>
      <source>The list is complete</source>
      <translation>Die Liste ist vollständig</translation>
    </message>
    <message>
      <source>The list is written</source>
      <translation>Die Liste ist geschrieben</translation>
    </message>
    <message>
      <source>The list of {cart} is printed</source>
      <translation>Die Liste von {cart} ist gedruckt</translation>
    </message>
    <message>
      <source>The lower limit is above the upper one</source>
      <translation>Die untere Grenze liegt über der oberen</translation>
    </message>
    <message>
      <source>The new PIN</source>
      <translation>Die neue PIN</translation>
    </message>
    <message>
      <source>The newest act of this station was at {area}</source>
      <translation>Das Letzte an diesem Platz war: {area}</translation>
    </message>
    <message>
      <source>The newest stands first.</source>
      <translation>Das Neueste steht zuerst.</translation>
    </message>
    <message>
      <source>The next hour</source>
      <translation>Die nächste Stunde</translation>
    </message>
    <message>
      <source>The next ones</source>
      <translation>Die nächsten</translation>
    </message>
    <message>
      <source>The next problem</source>
      <translation>Der nächste Fehler</translation>
    </message>
    <message>
      <source>The next sheet is a first-off.</source>
      <translation>Die nächste Platte ist ein Erstteil.</translation>
    </message>
    <message>
      <source>The next start goes back to {file}</source>
      <translation>Der nächste Start kehrt zurück zu {file}</translation>
    </message>
    <message>
      <source>The number of its order, pack or part?</source>
      <translation>Nummer von Auftrag, Paket oder Teil?</translation>
    </message>
    <message>
      <source>The number of this revision is {id}</source>
      <translation>Die Nummer dieser Revision ist {id}</translation>
    </message>
    <message>
      <source>The office enters it. Take the next order.</source>
      <translation>Das Büro trägt es ein. Nächsten Auftrag nehmen.</translation>
    </message>
    <message>
      <source>The office enters the one that does; then scan it again.</source>
      <translation>Das Büro trägt ein, welche es macht; dann noch einmal scannen.</translation>
    </message>
    <message>
      <source>The office gives it a number of packs ahead.</source>
      <translation>Das Büro gibt ihm eine Zahl von Paketen auf Vorrat.</translation>
    </message>
    <message>
      <source>The office gives it a part.</source>
      <translation>Das Büro gibt ihm ein Teil.</translation>
    </message>
    <message>
      <source>The office gives it one first.</source>
      <translation>Das Büro vergibt erst eins.</translation>
    </message>
    <message>
      <source>The office gives it one.</source>
      <translation>Das Büro vergibt eins.</translation>
    </message>
    <message>
      <source>The office is locked</source>
      <translation>Das Büro ist zugesperrt</translation>
    </message>
    <message>
      <source>The office or the plan releases it.</source>
      <translation>Das Büro oder der Plan gibt sie frei.</translation>
    </message>
    <message>
      <source>The order list is written: {n} {n|line|lines}</source>
      <translation>Die Bestellliste ist geschrieben: {n} {n|Zeile|Zeilen}</translation>
    </message>
    <message>
      <source>The order that they were for takes no pieces any more</source>
      <translation>Der Auftrag, für den sie waren, nimmt keine Teile mehr</translation>
    </message>
    <message>
      <source>The other {left} {left|sheet is|sheets are} held; cut parts go on.</source>
      <translation>{left} weitere {left|ist|Platten sind} gesperrt; Gefrästes geht weiter.</translation>
    </message>
    <message>
      <source>The outline of this piece is cut before this.</source>
      <translation>Der Umriss dieses Stücks wird vorher gefräst.</translation>
    </message>
    <message>
      <source>The pack has changed since</source>
      <translation>Das Paket hat sich seitdem geändert</translation>
    </message>
    <message>
      <source>The pack is empty</source>
      <translation>Das Paket ist leer</translation>
    </message>
    <message>
      <source>The passes of this outline do not go the same way here.</source>
      <translation>Die Durchgänge dieses Umrisses gehen hier nicht denselben Weg.</translation>
    </message>
    <message>
      <source>The path is {long} × {wide} mm; the bed of {router} is smaller.</source>
      <translation>Der Weg ist {long} × {wide} mm groß; der Tisch von {router} ist kleiner.</translation>
    </message>
    <message>
      <source>The path of the bit</source>
      <translation>Der Weg des Fräsers</translation>
    </message>
    <message>
      <source>The pick list of order {order} is printed</source>
      <translation>Die Entnahmeliste von Auftrag {order} ist gedruckt</translation>
    </message>
    <message>
      <source>The rack has no whole {p}</source>
      <translation>Das Regal hat kein ganzes {p}</translation>
    </message>
    <message>
      <source>The rack is below its minimum</source>
      <translation>Das Regal ist unter Mindestbestand</translation>
    </message>
    <message>
      <source>The rest goes in another. Close this one.</source>
      <translation>Der Rest kommt in ein anderes. Schließ dieses.</translation>
    </message>
    <message>
      <source>The rest is there: close it too.</source>
      <translation>Der Rest ist da: schließ ihn auch.</translation>
    </message>
    <message>
      <source>The router does not have bit {number}.</source>
      <translation>Die Fräse hat Fräser {number} nicht.</translation>
    </message>
    <message>
      <source>The router is told when you pass on.</source>
      <translation>Die Fräse erfährt es beim Weitergeben.</translation>
    </message>
    <message>
      <source>The router moves this path sideways, by {radius} mm.</source>
      <translation>Die Fräse versetzt diesen Weg seitlich, um {radius} mm.</translation>
    </message>
    <message>
      <source>The router moves this path sideways; read as by half the bit. Where its own list has another size, or wear alone, sizes differ.</source>
      <translation>Die Fräse versetzt diesen Weg seitlich; gelesen als um den halben Fräser. Steht in ihrer eigenen Liste ein anderes Maß oder nur die Abnutzung, weichen die Maße ab.</translation>
    </message>
    <message>
      <source>The router's folder has no text of revision {letter}</source>
      <translation>Im Ordner der Fräse fehlt der Text von Revision {letter}</translation>
    </message>
    <message>
      <source>The router's own stop; never hold parts by hand.</source>
      <translation>Den Halt der Fräse selbst nehmen; nie Teile mit der Hand halten.</translation>
    </message>
    <message>
      <source>The same PIN once more</source>
      <translation>Dieselbe PIN noch einmal</translation>
    </message>
    <message>
      <source>The same again within a moment: counted once</source>
      <translation>Dasselbe gleich noch einmal: einmal gezählt</translation>
    </message>
    <message>
      <source>The same parts, places, tabs, time and bits.</source>
      <translation>Dieselben Teile, Stellen, Stege, Zeiten und Fräser.</translation>
    </message>
    <message>
      <source>The screen is dark now</source>
      <translation>Der Bildschirm ist jetzt dunkel</translation>
    </message>
    <message>
      <source>The screen is light now</source>
      <translation>Der Bildschirm ist jetzt hell</translation>
    </message>
    <message>
      <source>The screen stays free.</source>
      <translation>Der Bildschirm bleibt frei.</translation>
    </message>
    <message>
      <source>The sheet as it comes off</source>
      <translation>Die Platte, wie sie herauskommt</translation>
    </message>
    <message>
      <source>The sheet is not held down yet</source>
      <translation>Die Platte ist noch nicht niedergehalten</translation>
    </message>
    <message>
      <source>The sheet is off the bed</source>
      <translation>Die Platte ist vom Tisch</translation>
    </message>
    <message>
      <source>The shop has no router</source>
      <translation>Die Werkstatt hat keine Fräse</translation>
    </message>
    <message>
      <source>The shop has not said yet: {what}</source>
      <translation>Die Werkstatt hat noch nicht geantwortet: {what}</translation>
    </message>
    <message>
      <source>The shop is away</source>
      <translation>Die Werkstatt ist nicht erreichbar</translation>
    </message>
    <message>
      <source>The shop is away: {why}</source>
      <translation>Die Werkstatt ist nicht erreichbar: {why}</translation>
    </message>
    <message>
      <source>The shop is set up</source>
      <translation>Die Werkstatt ist eingerichtet</translation>
    </message>
    <message>
      <source>The shop knows all that it starts with</source>
      <translation>Die Werkstatt kennt alles, womit sie beginnt</translation>
    </message>
    <message>
      <source>The shop's database is too old: its owner types station update-shop URL</source>
      <translation>Die Datenbank der Werkstatt ist zu alt: wem sie gehört, gibt station update-shop URL ein</translation>
    </message>
    <message>
      <source>The shop's database refuses an act of this PC</source>
      <translation>Die Datenbank der Werkstatt weist etwas von diesem PC ab</translation>
    </message>
    <message>
      <source>The shop's file is being mended; entries read: {n}</source>
      <translation>Die Datei der Werkstatt wird repariert. Gelesene Einträge: {n}</translation>
    </message>
    <message>
      <source>The shop's file is being mended; entries saved: {n} of {of}</source>
      <translation>Die Datei der Werkstatt wird repariert. Gerettete Einträge: {n} von {of}</translation>
    </message>
    <message>
      <source>The spindle has a bit of {there} mm; this remark asks for {asked} mm.</source>
      <translation>In der Spindel ist ein Fräser von {there} mm; diese Bemerkung verlangt {asked} mm.</translation>
    </message>
    <message>
      <source>The stop is over</source>
      <translation>Der Halt ist vorbei</translation>
    </message>
    <message>
      <source>The supervisor sees it under Needs a look.</source>
      <translation>Die Aufsicht sieht es unter „Bitte ansehen“.</translation>
    </message>
    <message>
      <source>The tab that line {line} leaves is cut through here.</source>
      <translation>Der Steg, den Zeile {line} stehen lässt, wird hier durchtrennt.</translation>
    </message>
    <message>
      <source>The table {table} differs in {n} {n|row|rows}: {first}</source>
      <translation>Die Tabelle {table} weicht in {n} {n|Zeile|Zeilen} ab: {first}</translation>
    </message>
    <message>
      <source>The text does not name its units</source>
      <translation>Der Text nennt seine Einheit nicht</translation>
    </message>
    <message>
      <source>The text is written in</source>
      <translation>Der Text ist geschrieben in</translation>
    </message>
    <message>
      <source>The text that the router runs. It is only read, never changed.</source>
      <translation>Der Text, den die Fräse fährt. Er wird nur gelesen, nie geändert.</translation>
    </message>
    <message>
      <source>The thickness itself is outside its limits</source>
      <translation>Die Dicke selbst liegt außerhalb ihrer Grenzen</translation>
    </message>
    <message>
      <source>The two are not the same</source>
      <translation>Die beiden sind nicht gleich</translation>
    </message>
    <message>
      <source>The whole history is copied</source>
      <translation>Die ganze Geschichte ist kopiert</translation>
    </message>
    <message>
      <source>The whole sheet</source>
      <translation>Die ganze Platte</translation>
    </message>
    <message>
      <source>The work in hand stays as it was.</source>
      <translation>Die Arbeit in der Hand bleibt, wie sie war.</translation>
    </message>
    <message>
      <source>The {kind} {id} has changed since</source>
      <translation>Seitdem geändert: {kind} {id}</translation>
    </message>
    <message>
      <source>The {size} mm bit was not scanned in</source>
      <translation>Der Fräser mit {size} mm wurde nicht gescannt</translation>
    </message>
    <message>
      <source>Then</source>
      <translation>Danach</translation>
    </message>
    <message>
      <source>Then it is worn anew, and zero and a first-off are due.</source>
      <translation>Dann zählt ihr Verschleiß neu, und Nullpunkt und Erstteil sind fällig.</translation>
    </message>
    <message>
      <source>Then scan or touch the reason. Hands off the bed.</source>
      <translation>Dann den Grund scannen oder berühren. Hände weg vom Tisch.</translation>
    </message>
    <message>
      <source>Then “{done}”.</source>
      <translation>Dann „{done}“.</translation>
    </message>
    <message>
      <source>Then “{over}”.</source>
      <translation>Dann „{over}“.</translation>
    </message>
    <message>
      <source>Then “{read}”.</source>
      <translation>Dann „{read}“.</translation>
    </message>
    <message>
      <source>Then, by hand: checked at its change</source>
      <translation>Dann von Hand: beim Wechsel geprüft</translation>
    </message>
    <message>
      <source>There are {n} {n|hold-down|hold-downs} already</source>
      <translation>Es gibt schon {n} {n|Niederhalter|Niederhalter}</translation>
    </message>
    <message>
      <source>There is no answer {n}</source>
      <translation>Es gibt keine Antwort {n}</translation>
    </message>
    <message>
      <source>There is no backup in that row</source>
      <translation>In dieser Zeile steht keine Sicherung</translation>
    </message>
    <message>
      <source>There is no backup since {day}</source>
      <translation>Seit {day} gibt es keine Sicherung</translation>
    </message>
    <message>
      <source>There is no backup yet</source>
      <translation>Es gibt noch keine Sicherung</translation>
    </message>
    <message>
      <source>There is no batch {batch}</source>
      <translation>Es gibt kein Los {batch}</translation>
    </message>
    <message>
      <source>There is no cart {id}</source>
      <translation>Es gibt keinen Wagen {id}</translation>
    </message>
    <message>
      <source>There is no field in that row</source>
      <translation>In dieser Zeile ist kein Feld</translation>
    </message>
    <message>
      <source>There is no field {name}</source>
      <translation>Es gibt kein Feld {name}</translation>
    </message>
    <message>
      <source>There is no file in that row</source>
      <translation>In dieser Zeile ist keine Datei</translation>
    </message>
    <message>
      <source>There is no line in that row</source>
      <translation>In dieser Zeile ist kein Posten</translation>
    </message>
    <message>
      <source>There is no list called {kind}</source>
      <translation>Es gibt keine Liste {kind}</translation>
    </message>
    <message>
      <source>There is no lot {lot}</source>
      <translation>Es gibt keine Charge {lot}</translation>
    </message>
    <message>
      <source>There is no order @{word}</source>
      <translation>Es gibt keinen Befehl @{word}</translation>
    </message>
    <message>
      <source>There is no problem</source>
      <translation>Es gibt keinen Fehler</translation>
    </message>
    <message>
      <source>There is no revision {letter}</source>
      <translation>Es gibt keine Revision {letter}</translation>
    </message>
    <message>
      <source>There is no such batch</source>
      <translation>Es gibt kein solches Los</translation>
    </message>
    <message>
      <source>There is no such batch to cancel</source>
      <translation>Ein solches Los gibt es nicht zu stornieren</translation>
    </message>
    <message>
      <source>There is no such bit</source>
      <translation>Es gibt keinen solchen Fräser</translation>
    </message>
    <message>
      <source>There is no such card</source>
      <translation>Diese Karte gibt es nicht</translation>
    </message>
    <message>
      <source>There is no such mailer</source>
      <translation>Es gibt keine solche Versandtasche</translation>
    </message>
    <message>
      <source>There is no such material</source>
      <translation>Es gibt kein solches Material</translation>
    </message>
    <message>
      <source>There is no such order</source>
      <translation>Es gibt keinen solchen Auftrag</translation>
    </message>
    <message>
      <source>There is no such pack</source>
      <translation>Es gibt kein solches Paket</translation>
    </message>
    <message>
      <source>There is no such part</source>
      <translation>Es gibt kein solches Teil</translation>
    </message>
    <message>
      <source>There is no such product</source>
      <translation>Dieses Produkt gibt es nicht</translation>
    </message>
    <message>
      <source>There is no such router</source>
      <translation>Es gibt keine solche Fräse</translation>
    </message>
    <message>
      <source>There is no such worker</source>
      <translation>Es gibt keinen solchen Mitarbeiter</translation>
    </message>
    <message>
      <source>There is no work area {area}</source>
      <translation>Es gibt keinen Arbeitsplatz {area}</translation>
    </message>
    <message>
      <source>There is no worker {id}</source>
      <translation>Es gibt keinen Mitarbeiter {id}</translation>
    </message>
    <message>
      <source>There is no {field} {text}</source>
      <translation>Es gibt nicht: {field} {text}</translation>
    </message>
    <message>
      <source>There is no {kind} {id}</source>
      <translation>Gibt es nicht: {kind} {id}</translation>
    </message>
    <message>
      <source>There is none.</source>
      <translation>Es gibt keine.</translation>
    </message>
    <message>
      <source>There is nothing in that row</source>
      <translation>In dieser Zeile ist nichts</translation>
    </message>
    <message>
      <source>There is nothing to read</source>
      <translation>Es gibt nichts zu lesen</translation>
    </message>
    <message>
      <source>There is nothing to release here</source>
      <translation>Hier gibt es nichts freizugeben</translation>
    </message>
    <message>
      <source>There is nothing to take back</source>
      <translation>Es gibt nichts zurückzunehmen</translation>
    </message>
    <message>
      <source>There is nothing to take back here</source>
      <translation>Hier gibt es nichts zurückzunehmen</translation>
    </message>
    <message>
      <source>There is one shop</source>
      <translation>Es gibt eine Werkstatt</translation>
    </message>
    <message>
      <source>They are in pack {pack}: scan its label to open it.</source>
      <translation>Sie sind in Paket {pack}: scanne sein Etikett, um es zu öffnen.</translation>
    </message>
    <message>
      <source>They want {parts}. Put the {part} back.</source>
      <translation>Sie brauchen {parts}. {part} zurücklegen.</translation>
    </message>
    <message>
      <source>Thickness</source>
      <translation>Dicke</translation>
    </message>
    <message>
      <source>This G10 is not known; it is left out.</source>
      <translation>Dieses G10 ist nicht bekannt; es bleibt weg.</translation>
    </message>
    <message>
      <source>This PC</source>
      <translation>Dieser PC</translation>
    </message>
    <message>
      <source>This PC alone is station {id} now</source>
      <translation>Nur dieser PC ist jetzt Station {id}</translation>
    </message>
    <message>
      <source>This PC could not join</source>
      <translation>Dieser PC konnte nicht beitreten</translation>
    </message>
    <message>
      <source>This PC gets ready to read cut files, once</source>
      <translation>Dieser PC richtet sich einmal zum Lesen von Fräsdateien ein</translation>
    </message>
    <message>
      <source>This PC is station {id} from its next start</source>
      <translation>Dieser PC ist ab seinem nächsten Start Station {id}</translation>
    </message>
    <message>
      <source>This PC joins the shop</source>
      <translation>Dieser PC tritt der Werkstatt bei</translation>
    </message>
    <message>
      <source>This PC knows what was done since {at}.</source>
      <translation>Dieser PC weiß, was seit {at} getan wurde.</translation>
    </message>
    <message>
      <source>This PC's clock is wrong: nothing was counted</source>
      <translation>Die Uhr dieses PCs geht falsch: nichts wurde gezählt</translation>
    </message>
    <message>
      <source>This PC's clock is wrong: work was done {at}</source>
      <translation>Die Uhr dieses PCs geht falsch: Gearbeitet wurde {at}</translation>
    </message>
    <message>
      <source>This PC's clock is {n} min off</source>
      <translation>Die Uhr dieses PCs geht {n} min falsch</translation>
    </message>
    <message>
      <source>This PC's disk fails</source>
      <translation>Die Festplatte dieses PCs versagt</translation>
    </message>
    <message>
      <source>This PC's station</source>
      <translation>Die Station dieses PCs</translation>
    </message>
    <message>
      <source>This arc ends at its own centre; read as a straight move.</source>
      <translation>Dieser Bogen endet in seiner eigenen Mitte; als Gerade gelesen.</translation>
    </message>
    <message>
      <source>This arc goes the long way round: the cuts beside it meet it from behind. Is it G2 for G3, or G3 for G2?</source>
      <translation>Dieser Bogen geht den langen Weg herum: Die Schnitte daneben treffen von hinten auf ihn. Steht G2 statt G3 da, oder G3 statt G2?</translation>
    </message>
    <message>
      <source>This arc has a centre and a radius; the radius is used.</source>
      <translation>Dieser Bogen hat Mitte und Radius; der Radius gilt.</translation>
    </message>
    <message>
      <source>This arc has no centre; read as a straight move.</source>
      <translation>Dieser Bogen hat keine Mitte; als Gerade gelesen.</translation>
    </message>
    <message>
      <source>This batch is held</source>
      <translation>Dieses Los ist gesperrt</translation>
    </message>
    <message>
      <source>This contour cuts into another part.</source>
      <translation>Dieser Umriss schneidet in ein anderes Teil.</translation>
    </message>
    <message>
      <source>This cut goes across other parts.</source>
      <translation>Dieser Schnitt geht quer durch andere Teile.</translation>
    </message>
    <message>
      <source>This cut leaves {left} mm and frees nothing.</source>
      <translation>Dieser Schnitt lässt {left} mm stehen und löst nichts heraus.</translation>
    </message>
    <message>
      <source>This cycle has no feed.</source>
      <translation>Dieser Zyklus hat keinen Vorschub.</translation>
    </message>
    <message>
      <source>This cycle needs Q above zero; nothing is drilled here.</source>
      <translation>Dieser Zyklus braucht Q über null; hier wird nichts gebohrt.</translation>
    </message>
    <message>
      <source>This does not stop the router</source>
      <translation>Das hält die Fräse nicht an</translation>
    </message>
    <message>
      <source>This does not stop the router: use its own stop</source>
      <translation>Das hält die Fräse nicht an: ihren eigenen Halt benutzen</translation>
    </message>
    <message>
      <source>This does not stop the router: use its own stop.</source>
      <translation>Das hält die Fräse nicht an: ihren eigenen Halt benutzen.</translation>
    </message>
    <message>
      <source>This is cut a second time; line {line} has cut it as deep.</source>
      <translation>Das wird ein zweites Mal gefräst; Zeile {line} hat es schon so tief gefräst.</translation>
    </message>
    <message>
      <source>This is cut in a piece that is free already.</source>
      <translation>Das wird in ein Stück gefräst, das schon frei ist.</translation>
    </message>
    <message>
      <source>This is cut out of a piece that is free already.</source>
      <translation>Das wird aus einem Stück gefräst, das schon frei ist.</translation>
    </message>
    <message>
      <source>This job takes {want}.</source>
      <translation>Hierfür braucht es {want}.</translation>
    </message>
    <message>
      <source>This lap does not go through everywhere: up to {left} mm is left.</source>
      <translation>Diese Runde geht nicht überall durch: bis zu {left} mm bleiben stehen.</translation>
    </message>
    <message>
      <source>This line has more than {most} letters.</source>
      <translation>Diese Zeile hat mehr als {most} Zeichen.</translation>
    </message>
    <message>
      <source>This move has no feed.</source>
      <translation>Dieser Weg hat keinen Vorschub.</translation>
    </message>
    <message>
      <source>This order is cancelled</source>
      <translation>Dieser Auftrag ist storniert</translation>
    </message>
    <message>
      <source>This outline ends {gap} mm before its start: that holds the piece.</source>
      <translation>Dieser Umriss endet {gap} mm vor seinem Anfang: das hält das Stück.</translation>
    </message>
    <message>
      <source>This outline ends {gap} mm from where it began, and frees nothing.</source>
      <translation>Dieser Umriss endet {gap} mm von seinem Anfang entfernt und löst nichts heraus.</translation>
    </message>
    <message>
      <source>This piece has no tabs and comes loose while it is cut.</source>
      <translation>Dieses Stück hat keine Stege und löst sich beim Fräsen.</translation>
    </message>
    <message>
      <source>This piece has no tabs, and all others have.</source>
      <translation>Dieses Stück hat keine Stege, alle anderen haben welche.</translation>
    </message>
    <message>
      <source>This piece has no tabs, and others that are equal to it have.</source>
      <translation>Dieses Stück hat keine Stege, andere gleiche haben welche.</translation>
    </message>
    <message>
      <source>This piece is not cut through: up to {left} mm is left.</source>
      <translation>Dieses Stück ist nicht durchgefräst: bis zu {left} mm bleiben stehen.</translation>
    </message>
    <message>
      <source>This piece is small and loose; it may fly off.</source>
      <translation>Dieses Stück ist klein und lose; es kann wegfliegen.</translation>
    </message>
    <message>
      <source>This remark says {said} mm; it cuts as for a sheet of {thick} mm. Which is it?</source>
      <translation>Diese Bemerkung sagt {said} mm; gefräst wird wie für eine Platte von {thick} mm. Was stimmt?</translation>
    </message>
    <message>
      <source>This remark says {said} mm; the bit goes across {high} mm above the spoilboard.</source>
      <translation>Diese Bemerkung sagt {said} mm; der Fräser fährt {high} mm über der Opferplatte quer.</translation>
    </message>
    <message>
      <source>This remark says {said} mm; the sheet has {thick} mm. Is it for another one?</source>
      <translation>Diese Bemerkung sagt {said} mm; die Platte hat {thick} mm. Gehört die Datei zu einer anderen?</translation>
    </message>
    <message>
      <source>This screen</source>
      <translation>Dieser Bildschirm</translation>
    </message>
    <message>
      <source>This screen cannot be shown: something is wrong in the program</source>
      <translation>Dieser Bildschirm kann nicht gezeigt werden: im Programm stimmt etwas nicht</translation>
    </message>
    <message>
      <source>This screen serves one router</source>
      <translation>Dieser Bildschirm gehört zu einer Fräse</translation>
    </message>
    <message>
      <source>This screen speaks {language} now</source>
      <translation>Dieser Bildschirm spricht jetzt {language}</translation>
    </message>
    <message>
      <source>This shop</source>
      <translation>Diese Werkstatt</translation>
    </message>
    <message>
      <source>This shop does not know it any more</source>
      <translation>Diese Werkstatt kennt es nicht mehr</translation>
    </message>
    <message>
      <source>This shop is set up already</source>
      <translation>Diese Werkstatt ist schon eingerichtet</translation>
    </message>
    <message>
      <source>This shop knows no order, pack or part {number}</source>
      <translation>Diese Werkstatt kennt weder Auftrag noch Paket noch Teil {number}</translation>
    </message>
    <message>
      <source>This shop knows no rack place {id}</source>
      <translation>Regalplatz {id} kennt diese Werkstatt nicht</translation>
    </message>
    <message>
      <source>This shop knows no {kind} {number}</source>
      <translation>Diese Werkstatt kennt das nicht: {kind} {number}</translation>
    </message>
    <message>
      <source>This shop's health</source>
      <translation>Zustand dieser Werkstatt</translation>
    </message>
    <message>
      <source>This tab is too thin to hold: {wide} mm wide and {high} mm high.</source>
      <translation>Dieser Steg ist zu dünn, um zu halten: {wide} mm breit und {high} mm hoch.</translation>
    </message>
    <message>
      <source>Throw it away. Order {order} is cancelled.</source>
      <translation>Wegwerfen. Auftrag {order} ist storniert.</translation>
    </message>
    <message>
      <source>Throw it away. Order {order} is in pack {pack} now.</source>
      <translation>Wegwerfen. Auftrag {order} ist jetzt in Paket {pack}.</translation>
    </message>
    <message>
      <source>Throw it away. Order {order} is in packs {packs} now.</source>
      <translation>Wirf es weg. Auftrag {order} ist jetzt in den Paketen {packs}.</translation>
    </message>
    <message>
      <source>Throw it away. Order {order} took what was in it.</source>
      <translation>Wegwerfen. Auftrag {order} hat den Inhalt genommen.</translation>
    </message>
    <message>
      <source>Throw it away. {then}</source>
      <translation>Wegwerfen. {then}</translation>
    </message>
    <message>
      <source>Throw it away; use copy {new}. Nothing was counted.</source>
      <translation>Wegwerfen; Kopie {new} benutzen. Nichts wurde gezählt.</translation>
    </message>
    <message>
      <source>Throw its card away: its parts are on the rack again.</source>
      <translation>Die Karte wegwerfen: Die Teile liegen wieder im Regal.</translation>
    </message>
    <message>
      <source>Throw its papers away with them.</source>
      <translation>Seine Papiere mit wegwerfen.</translation>
    </message>
    <message>
      <source>Throw its traveller away.</source>
      <translation>Die Laufkarte wegwerfen.</translation>
    </message>
    <message>
      <source>Throw the old label away.</source>
      <translation>Das alte Etikett wegwerfen.</translation>
    </message>
    <message>
      <source>Throw this card away: it works once.</source>
      <translation>Wirf diese Karte weg: sie gilt einmal.</translation>
    </message>
    <message>
      <source>Throw this paper away. Nothing was counted.</source>
      <translation>Dieses Papier wegwerfen. Nichts wurde gezählt.</translation>
    </message>
    <message>
      <source>Thu</source>
      <translation>Do</translation>
    </message>
    <message>
      <source>Tick it when the bed is free.</source>
      <translation>Abhaken, wenn der Tisch frei ist.</translation>
    </message>
    <message>
      <source>Time over the file's</source>
      <translation>Zeit über der der Datei</translation>
    </message>
    <message>
      <source>To be made good</source>
      <translation>Nachzubessern</translation>
    </message>
    <message>
      <source>To look at</source>
      <translation>Anzusehen</translation>
    </message>
    <message>
      <source>To look at: {a} to {b} of {n}</source>
      <translation>Anzusehen: {a} bis {b} von {n}</translation>
    </message>
    <message>
      <source>To order</source>
      <translation>Zu bestellen</translation>
    </message>
    <message>
      <source>To packing, with order {order}.</source>
      <translation>Zum Packen, mit Auftrag {order}.</translation>
    </message>
    <message>
      <source>To packing: {count}</source>
      <translation>Zum Packen: {count}</translation>
    </message>
    <message>
      <source>To put back</source>
      <translation>Zurückzulegen</translation>
    </message>
    <message>
      <source>To rework</source>
      <translation>Zur Nacharbeit</translation>
    </message>
    <message>
      <source>To say</source>
      <translation>Zu sagen</translation>
    </message>
    <message>
      <source>To the rack: {count}</source>
      <translation>Ins Regal: {count}</translation>
    </message>
    <message>
      <source>To trimming with its traveller. No order is owed by it: others are a new order.</source>
      <translation>Mit seiner Laufkarte zum Verputzen. Keinem Auftrag wird dafür etwas geschuldet: Ersatz ist ein neuer Auftrag.</translation>
    </message>
    <message>
      <source>To trimming with its traveller. What order {order} is owed by it, a supervisor says at Shop today.</source>
      <translation>Mit seiner Laufkarte zum Verputzen. Was Auftrag {order} dafür geschuldet wird, sagt die Aufsicht unter „Werkstatt heute“.</translation>
    </message>
    <message>
      <source>Told by</source>
      <translation>Aus</translation>
    </message>
    <message>
      <source>Too few sheets in the store: receive some, or order them.</source>
      <translation>Zu wenig Platten im Lager: welche annehmen oder bestellen.</translation>
    </message>
    <message>
      <source>Too heavy by {g} g: look through the pack.</source>
      <translation>{g} g zu schwer: Paket durchsehen.</translation>
    </message>
    <message>
      <source>Too light by {g} g: look through the pack.</source>
      <translation>{g} g zu leicht: Paket durchsehen.</translation>
    </message>
    <message>
      <source>Too many wrong PINs</source>
      <translation>Zu viele falsche PINs</translation>
    </message>
    <message>
      <source>Too many: {n} × {part}</source>
      <translation>Zu viel: {n} × {part}</translation>
    </message>
    <message>
      <source>Too much is in</source>
      <translation>Zu viel ist drin</translation>
    </message>
    <message>
      <source>Touch OK when it is complete, or scan “That is it”.</source>
      <translation>Wenn es vollständig ist: OK berühren oder „Das ist es“ scannen.</translation>
    </message>
    <message>
      <source>Touch a backup.</source>
      <translation>Berühr eine Sicherung.</translation>
    </message>
    <message>
      <source>Touch a field first.</source>
      <translation>Erst ein Feld berühren.</translation>
    </message>
    <message>
      <source>Touch a field, then its column. Then go on.</source>
      <translation>Ein Feld berühren, dann seine Spalte. Dann weiter.</translation>
    </message>
    <message>
      <source>Touch a field, type, save.</source>
      <translation>Feld berühren, tippen, speichern.</translation>
    </message>
    <message>
      <source>Touch a field.</source>
      <translation>Ein Feld berühren.</translation>
    </message>
    <message>
      <source>Touch a file.</source>
      <translation>Eine Datei berühren.</translation>
    </message>
    <message>
      <source>Touch a line first.</source>
      <translation>Erst einen Posten berühren.</translation>
    </message>
    <message>
      <source>Touch a line.</source>
      <translation>Einen Posten berühren.</translation>
    </message>
    <message>
      <source>Touch a list, or what is still missing.</source>
      <translation>Berühr eine Liste, oder was noch fehlt.</translation>
    </message>
    <message>
      <source>Touch a number, or bring this place closer.</source>
      <translation>Eine Nummer berühren oder diese Stelle näher holen.</translation>
    </message>
    <message>
      <source>Touch a number.</source>
      <translation>Eine Zahl berühren.</translation>
    </message>
    <message>
      <source>Touch a piece to count it spoiled there.</source>
      <translation>Ein Stück berühren, um es dort als Ausschuss zu zählen.</translation>
    </message>
    <message>
      <source>Touch a place further from every cut.</source>
      <translation>Eine Stelle weiter weg von jedem Schnitt berühren.</translation>
    </message>
    <message>
      <source>Touch a place in the waste.</source>
      <translation>Eine Stelle im Verschnitt berühren.</translation>
    </message>
    <message>
      <source>Touch a place on it.</source>
      <translation>Eine Stelle auf ihr berühren.</translation>
    </message>
    <message>
      <source>Touch a router first.</source>
      <translation>Erst eine Fräse berühren.</translation>
    </message>
    <message>
      <source>Touch a router or scan its card.</source>
      <translation>Fräse berühren oder Karte scannen.</translation>
    </message>
    <message>
      <source>Touch a router.</source>
      <translation>Eine Fräse berühren.</translation>
    </message>
    <message>
      <source>Touch a row or scan its card.</source>
      <translation>Zeile berühren oder Karte scannen.</translation>
    </message>
    <message>
      <source>Touch a row that is there.</source>
      <translation>Berühr eine Zeile, in der etwas steht.</translation>
    </message>
    <message>
      <source>Touch a row, or add a new one.</source>
      <translation>Zeile berühren oder neu anlegen.</translation>
    </message>
    <message>
      <source>Touch a row, or search for something else.</source>
      <translation>Eine Zeile berühren oder etwas anderes suchen.</translation>
    </message>
    <message>
      <source>Touch a row, then enter a number.</source>
      <translation>Eine Zeile berühren, dann eine Zahl eingeben.</translation>
    </message>
    <message>
      <source>Touch a row.</source>
      <translation>Eine Zeile berühren.</translation>
    </message>
    <message>
      <source>Touch an answer; it can be changed later.</source>
      <translation>Eine Antwort antippen; alles lässt sich später ändern.</translation>
    </message>
    <message>
      <source>Touch another chapter, or leave it.</source>
      <translation>Anderes Kapitel berühren oder es lassen.</translation>
    </message>
    <message>
      <source>Touch another field.</source>
      <translation>Ein anderes Feld berühren.</translation>
    </message>
    <message>
      <source>Touch it, or leave it.</source>
      <translation>Berühren oder so lassen.</translation>
    </message>
    <message>
      <source>Touch it.</source>
      <translation>Berühren.</translation>
    </message>
    <message>
      <source>Touch its kind, or enter its diameter in {unit}.</source>
      <translation>Seine Art berühren oder den Durchmesser in {unit} eingeben.</translation>
    </message>
    <message>
      <source>Touch its list.</source>
      <translation>Ihre Liste berühren.</translation>
    </message>
    <message>
      <source>Touch its row first.</source>
      <translation>Erst seine Zeile berühren.</translation>
    </message>
    <message>
      <source>Touch its row first: {parts}.</source>
      <translation>Erst die Zeile berühren: {parts}.</translation>
    </message>
    <message>
      <source>Touch its row or scan its card.</source>
      <translation>Zeile berühren oder Karte scannen.</translation>
    </message>
    <message>
      <source>Touch its row to change it.</source>
      <translation>Zum Ändern die Zeile berühren.</translation>
    </message>
    <message>
      <source>Touch its row, then enter how many.</source>
      <translation>Zeile berühren, dann Zahl eingeben.</translation>
    </message>
    <message>
      <source>Touch its row.</source>
      <translation>Die Zeile berühren.</translation>
    </message>
    <message>
      <source>Touch its size, or type it, then Enter.</source>
      <translation>Seine Breite antippen oder eintippen, dann Enter.</translation>
    </message>
    <message>
      <source>Touch one of them.</source>
      <translation>Eines davon antippen.</translation>
    </message>
    <message>
      <source>Touch one that can wait.</source>
      <translation>Eines berühren, das warten kann.</translation>
    </message>
    <message>
      <source>Touch one that stands here.</source>
      <translation>Eines berühren, das hier steht.</translation>
    </message>
    <message>
      <source>Touch one to hide it, or to show it again.</source>
      <translation>Eine berühren, um sie auszublenden oder wieder zu zeigen.</translation>
    </message>
    <message>
      <source>Touch one to read it.</source>
      <translation>Zum Lesen eine berühren.</translation>
    </message>
    <message>
      <source>Touch one to see what happened.</source>
      <translation>Antippen zeigt, was geschah.</translation>
    </message>
    <message>
      <source>Touch one to see where it is.</source>
      <translation>Eines antippen, um zu sehen, wo alles davon ist.</translation>
    </message>
    <message>
      <source>Touch one to take it in.</source>
      <translation>Eine berühren, um sie zu übernehmen.</translation>
    </message>
    <message>
      <source>Touch one, then where it is to stand.</source>
      <translation>Einen berühren, dann wo er stehen soll.</translation>
    </message>
    <message>
      <source>Touch one: it is cut again, or dropped.</source>
      <translation>Eine berühren: sie wird noch einmal gefräst oder gestrichen.</translation>
    </message>
    <message>
      <source>Touch the button again, then scan a part that is in it.</source>
      <translation>Taste noch einmal berühren, dann ein Teil scannen, das darin ist.</translation>
    </message>
    <message>
      <source>Touch the cut file that it belongs to, or a new one.</source>
      <translation>Die Fräsdatei berühren, zu der sie gehört, oder eine neue.</translation>
    </message>
    <message>
      <source>Touch the line to take out.</source>
      <translation>Den Posten berühren, der gestrichen wird.</translation>
    </message>
    <message>
      <source>Touch the next field, or save.</source>
      <translation>Nächstes Feld berühren oder speichern.</translation>
    </message>
    <message>
      <source>Touch the next row, or work on.</source>
      <translation>Nächste Zeile berühren oder weiterarbeiten.</translation>
    </message>
    <message>
      <source>Touch the one that fits.</source>
      <translation>Den passenden antippen.</translation>
    </message>
    <message>
      <source>Touch the one to go back to.</source>
      <translation>Berühr die, zu der es zurückgehen soll.</translation>
    </message>
    <message>
      <source>Touch the place first.</source>
      <translation>Erst die Stelle berühren.</translation>
    </message>
    <message>
      <source>Touch the place that was counted.</source>
      <translation>Den gezählten Platz berühren.</translation>
    </message>
    <message>
      <source>Touch what is not so.</source>
      <translation>Berühren, was nicht stimmt.</translation>
    </message>
    <message>
      <source>Touch what needs a look, or scan any code.</source>
      <translation>Berühr, was anzusehen ist, oder scann irgendeinen Code.</translation>
    </message>
    <message>
      <source>Touch what needs a look.</source>
      <translation>Antippen, was anzusehen ist.</translation>
    </message>
    <message>
      <source>Touch where it is to stand; touch it again to take it away.</source>
      <translation>Berühren, wo er stehen soll; ihn noch einmal berühren, um ihn wegzunehmen.</translation>
    </message>
    <message>
      <source>Touch which. A wrong one is 25 times too large or too small.</source>
      <translation>Das Richtige berühren. Ein falsches ist 25-mal zu groß oder zu klein.</translation>
    </message>
    <message>
      <source>Touch “Look again”.</source>
      <translation>„Noch einmal nachsehen“ berühren.</translation>
    </message>
    <message>
      <source>Touch “Part missing” to count them.</source>
      <translation>Zum Zählen „Teil fehlt“ berühren.</translation>
    </message>
    <message>
      <source>Touch “Put back”, scan {parts}; then take others.</source>
      <translation>„Zurücklegen“ antippen, {parts} scannen; dann andere nehmen.</translation>
    </message>
    <message>
      <source>Touch “{alone}”, then settle each.</source>
      <translation>„{alone}“ berühren, dann jedes erledigen.</translation>
    </message>
    <message>
      <source>Touched twice: that piece is taken back.</source>
      <translation>Zweimal berührt: dieses Teil ist zurückgenommen.</translation>
    </message>
    <message>
      <source>Traveller lost</source>
      <translation>Laufkarte verloren</translation>
    </message>
    <message>
      <source>Traveller of batch {batch}</source>
      <translation>Laufkarte von Los {batch}</translation>
    </message>
    <message>
      <source>Trimmed at {at} by worker {worker}: {n} good</source>
      <translation>Verputzt um {at} von Mitarbeiter {worker}: {n} gut</translation>
    </message>
    <message>
      <source>Trimming</source>
      <translation>Verputzen</translation>
    </message>
    <message>
      <source>Trimming measures it again; or a supervisor lets it go on.</source>
      <translation>Beim Verputzen nachmessen; oder eine Aufsicht gibt es frei.</translation>
    </message>
    <message>
      <source>Try them once more; a third try is not allowed.</source>
      <translation>Noch einmal versuchen; ein drittes Mal gibt es nicht.</translation>
    </message>
    <message>
      <source>Tue</source>
      <translation>Di</translation>
    </message>
    <message>
      <source>Two packs</source>
      <translation>Zwei Pakete</translation>
    </message>
    <message>
      <source>Two packs: {why}</source>
      <translation>Zwei Pakete: {why}</translation>
    </message>
    <message>
      <source>Two papers bear it: give one of them another.</source>
      <translation>Zwei Papiere tragen sie: einem davon eine neue geben.</translation>
    </message>
    <message>
      <source>Two people or a lift if it is heavy; gloves on for it, off at the spindle.</source>
      <translation>Zu zweit oder mit Hebehilfe, wenn sie schwer ist; Handschuhe dafür an, an der Spindel aus.</translation>
    </message>
    <message>
      <source>Two people or a lift; gloves for sheets and offcuts only.</source>
      <translation>Zu zweit oder mit Heber; Handschuhe nur für Platten und Reste.</translation>
    </message>
    <message>
      <source>Type 1 or more.</source>
      <translation>1 oder mehr tippen.</translation>
    </message>
    <message>
      <source>Type 1 to 24 characters.</source>
      <translation>1 bis 24 Zeichen tippen.</translation>
    </message>
    <message>
      <source>Type a number, a word, or a part of one.</source>
      <translation>Eine Nummer, ein Wort oder einen Teil davon eintippen.</translation>
    </message>
    <message>
      <source>Type another.</source>
      <translation>Eine andere tippen.</translation>
    </message>
    <message>
      <source>Type another; a name of your own goes into the name.</source>
      <translation>Eine andere tippen; ein eigener Name gehört in den Namen.</translation>
    </message>
    <message>
      <source>Type it as it stands on the label or the card.</source>
      <translation>So eintippen, wie sie auf dem Etikett oder der Karte steht.</translation>
    </message>
    <message>
      <source>Type it as {example}.</source>
      <translation>Tippe es wie {example}.</translation>
    </message>
    <message>
      <source>Type it, then Enter.</source>
      <translation>Eintippen, dann Enter.</translation>
    </message>
    <message>
      <source>Type one to add it.</source>
      <translation>Zum Hinzufügen eins tippen.</translation>
    </message>
    <message>
      <source>Type or touch one</source>
      <translation>Eines eintippen oder antippen</translation>
    </message>
    <message>
      <source>Type the code, or scan it.</source>
      <translation>Tipp den Code, oder scann ihn.</translation>
    </message>
    <message>
      <source>Type the name of the PC or server that holds the shop's database. It is not on this card.</source>
      <translation>Tipp den Namen des PCs oder Servers mit der Datenbank der Werkstatt. Er steht nicht auf dieser Karte.</translation>
    </message>
    <message>
      <source>Type the whole number from its paper, zeros too, or scan it.</source>
      <translation>Die ganze Nummer vom Papier eintippen, auch die Nullen, oder scannen.</translation>
    </message>
    <message>
      <source>Type x, then y; or touch it.</source>
      <translation>Erst x, dann y tippen; oder berühren.</translation>
    </message>
    <message>
      <source>Type {behind} behind the name, without a blank.</source>
      <translation>Tipp {behind} hinter den Namen, ohne Leerzeichen.</translation>
    </message>
    <message>
      <source>Type {unit}, from {low} to {most}.</source>
      <translation>{unit} eintippen, von {low} bis {most}.</translation>
    </message>
    <message>
      <source>Under G93 every feed move needs its own F.</source>
      <translation>Unter G93 braucht jeder Vorschubweg sein eigenes F.</translation>
    </message>
    <message>
      <source>Under the master: rack {places}.</source>
      <translation>Unter das Muster: Regal {places}.</translation>
    </message>
    <message>
      <source>Under their own masters.</source>
      <translation>Jedes unter sein Muster.</translation>
    </message>
    <message>
      <source>Under way</source>
      <translation>Unterwegs</translation>
    </message>
    <message>
      <source>Under way: {where}. Wait, or send it short.</source>
      <translation>Unterwegs: {where}. Warten oder unvollständig schicken.</translation>
    </message>
    <message>
      <source>Undo the last act</source>
      <translation>Letztes zurücknehmen</translation>
    </message>
    <message>
      <source>Unplugged or locked first. The bit is hot, its edges are sharp.</source>
      <translation>Zuerst ausgesteckt oder gesichert. Der Fräser ist heiß, seine Schneiden sind scharf.</translation>
    </message>
    <message>
      <source>Up to {n} {part} more or less would not show: count those.</source>
      <translation>Bis zu {n} {part} mehr oder weniger würden nicht auffallen: nachzählen.</translation>
    </message>
    <message>
      <source>Update this program</source>
      <translation>Dieses Programm aktualisieren</translation>
    </message>
    <message>
      <source>Use @area, @router, @bench, @worker, @at or @place.</source>
      <translation>@area, @router, @bench, @worker, @at oder @place benutzen.</translation>
    </message>
    <message>
      <source>Use a new lot.</source>
      <translation>Eine neue Charge benutzen.</translation>
    </message>
    <message>
      <source>Use the router's own stop. Hands off until the spindle stands still.</source>
      <translation>Den eigenen Halt der Fräse benutzen. Hände weg, bis die Spindel steht.</translation>
    </message>
    <message>
      <source>Use the router's own stop. Never hold parts by hand.</source>
      <translation>Den eigenen Halt der Fräse benutzen. Nie Teile mit der Hand halten.</translation>
    </message>
    <message>
      <source>Use the router's own stop. Report the sheet spoiled.</source>
      <translation>Den eigenen Halt der Fräse benutzen. Platte als Ausschuss melden.</translation>
    </message>
    <message>
      <source>Use the router's own stop. Then scan a reason.</source>
      <translation>Den eigenen Halt der Fräse benutzen. Dann einen Grund scannen.</translation>
    </message>
    <message>
      <source>Vacuum dust, never blow it; a mask where it flies.</source>
      <translation>Staub saugen, nie blasen; Maske, wo er fliegt.</translation>
    </message>
    <message>
      <source>Vacuum the bed, hold the sheet down, tick it.</source>
      <translation>Tisch saugen, Platte niederhalten, abhaken.</translation>
    </message>
    <message>
      <source>Valid once, until {time}.</source>
      <translation>Gilt einmal, bis {time}.</translation>
    </message>
    <message>
      <source>Void: copy {old} was replaced by copy {new}</source>
      <translation>Ungültig: Kopie {old} wurde durch Kopie {new} ersetzt</translation>
    </message>
    <message>
      <source>Void: see copy {copy}</source>
      <translation>Ungültig: siehe Kopie {copy}</translation>
    </message>
    <message>
      <source>Wait a moment: it is thought about anew.</source>
      <translation>Einen Moment: es wird neu überlegt.</translation>
    </message>
    <message>
      <source>Wait for it</source>
      <translation>Darauf warten</translation>
    </message>
    <message>
      <source>Wait for it, or send it short.</source>
      <translation>Darauf warten oder unvollständig senden.</translation>
    </message>
    <message>
      <source>Wait for it, or “{stop}”.</source>
      <translation>Abwarten, oder „{stop}“.</translation>
    </message>
    <message>
      <source>Wait for sheet {n}, then scan its slip.</source>
      <translation>Auf Platte {n} warten, dann ihren Abschnitt scannen.</translation>
    </message>
    <message>
      <source>Wait {m} min, then enter it.</source>
      <translation>{m} min warten, dann eingeben.</translation>
    </message>
    <message>
      <source>Waiting here</source>
      <translation>Wartet hier</translation>
    </message>
    <message>
      <source>Waiting here: {n} more</source>
      <translation>Wartet hier: noch {n}</translation>
    </message>
    <message>
      <source>Waiting to pack</source>
      <translation>Wartet aufs Packen</translation>
    </message>
    <message>
      <source>Waits {n} seconds. Does this router take P as milliseconds?</source>
      <translation>Wartet {n} Sekunden. Nimmt diese Fräse P als Millisekunden?</translation>
    </message>
    <message>
      <source>Wed</source>
      <translation>Mi</translation>
    </message>
    <message>
      <source>Weigh</source>
      <translation>Wiegen</translation>
    </message>
    <message>
      <source>Weighed: close the pack when it is right.</source>
      <translation>Gewogen: Paket schließen, wenn es stimmt.</translation>
    </message>
    <message>
      <source>Weight on the scale</source>
      <translation>Gewicht auf der Waage</translation>
    </message>
    <message>
      <source>What a sheet takes besides its cuts: spindle up, the way home.</source>
      <translation>Was eine Platte außer ihren Schnitten braucht: Spindel hochfahren, Rückweg.</translation>
    </message>
    <message>
      <source>What all lists together would change</source>
      <translation>Was alle Listen zusammen ändern würden</translation>
    </message>
    <message>
      <source>What came back of {what}?</source>
      <translation>Was kam von {what} zurück?</translation>
    </message>
    <message>
      <source>What came back?</source>
      <translation>Was kam zurück?</translation>
    </message>
    <message>
      <source>What does it wait for?</source>
      <translation>Worauf wartet es?</translation>
    </message>
    <message>
      <source>What does the scale show?</source>
      <translation>Was zeigt die Waage?</translation>
    </message>
    <message>
      <source>What else?</source>
      <translation>Was noch?</translation>
    </message>
    <message>
      <source>What follows fills the rack.</source>
      <translation>Was folgt, füllt das Regal.</translation>
    </message>
    <message>
      <source>What happened</source>
      <translation>Was geschah</translation>
    </message>
    <message>
      <source>What is counted?</source>
      <translation>Was wird gezählt?</translation>
    </message>
    <message>
      <source>What is in hand is not recorded yet</source>
      <translation>Was in der Hand ist, ist noch nicht gebucht</translation>
    </message>
    <message>
      <source>What is in hand stays here.</source>
      <translation>Was in Arbeit ist, bleibt hier.</translation>
    </message>
    <message>
      <source>What is it?</source>
      <translation>Was ist das?</translation>
    </message>
    <message>
      <source>What is missing</source>
      <translation>Was fehlt</translation>
    </message>
    <message>
      <source>What is not counted as whole is lost.</source>
      <translation>Was nicht als heil gezählt ist, ist verloren.</translation>
    </message>
    <message>
      <source>What is not in the file stays as it was.</source>
      <translation>Was nicht in der Datei steht, bleibt, wie es war.</translation>
    </message>
    <message>
      <source>What is received, entered or counted beyond the book counts as come.</source>
      <translation>Was eingeht, eingetragen oder über das Buch hinaus gezählt wird, zählt als gekommen.</translation>
    </message>
    <message>
      <source>What is searched for?</source>
      <translation>Was wird gesucht?</translation>
    </message>
    <message>
      <source>What is sold: which parts it has.</source>
      <translation>Was verkauft wird: welche Teile es hat.</translation>
    </message>
    <message>
      <source>What is spoiled?</source>
      <translation>Was ist Ausschuss?</translation>
    </message>
    <message>
      <source>What is the new bit?</source>
      <translation>Was für ein Fräser ist der neue?</translation>
    </message>
    <message>
      <source>What is the new bit? A supervisor looks at it later.</source>
      <translation>Was für ein Fräser ist der neue? Eine Aufsicht sieht ihn später an.</translation>
    </message>
    <message>
      <source>What is wanted of it is known already: see Needs a look.</source>
      <translation>Was gewünscht wird, ist schon bekannt: siehe „Bitte ansehen“.</translation>
    </message>
    <message>
      <source>What is wanted stands under Needs a look.</source>
      <translation>Was gewünscht wird, steht unter „Bitte ansehen“.</translation>
    </message>
    <message>
      <source>What it came from</source>
      <translation>Woraus es kam</translation>
    </message>
    <message>
      <source>What it means</source>
      <translation>Was es bedeutet</translation>
    </message>
    <message>
      <source>What needs a look</source>
      <translation>Was anzusehen ist</translation>
    </message>
    <message>
      <source>What order {order} owes is order {owed}</source>
      <translation>Was Auftrag {order} schuldet, ist Auftrag {owed}</translation>
    </message>
    <message>
      <source>What packs are sent in.</source>
      <translation>Worin Pakete verschickt werden.</translation>
    </message>
    <message>
      <source>What packs take</source>
      <translation>Was Pakete brauchen</translation>
    </message>
    <message>
      <source>What part lies there?</source>
      <translation>Welches Teil liegt dort?</translation>
    </message>
    <message>
      <source>What sheets are made of, with its thickness.</source>
      <translation>Woraus Platten sind, mit der Dicke.</translation>
    </message>
    <message>
      <source>What stands here is as old as its time says.</source>
      <translation>Was hier steht, ist so alt, wie seine Zeit sagt.</translation>
    </message>
    <message>
      <source>What survived? Enter whole parts, or confirm.</source>
      <translation>Was ist heil? Heile Teile eingeben oder bestätigen.</translation>
    </message>
    <message>
      <source>What takes packs to shipping.</source>
      <translation>Was Pakete zum Versand bringt.</translation>
    </message>
    <message>
      <source>What to cut</source>
      <translation>Was fräsen</translation>
    </message>
    <message>
      <source>What to cut next stands here in a moment.</source>
      <translation>Was als Nächstes zu fräsen ist, steht gleich hier.</translation>
    </message>
    <message>
      <source>What was confirmed before is not of this stop.</source>
      <translation>Was vorher bestätigt wurde, gilt nicht für diesen Halt.</translation>
    </message>
    <message>
      <source>What was counted?</source>
      <translation>Was wurde gezählt?</translation>
    </message>
    <message>
      <source>What was done</source>
      <translation>Was getan wurde</translation>
    </message>
    <message>
      <source>What was done before {day} is not on this PC.</source>
      <translation>Was vor dem {day} geschah, ist auf diesem PC nicht vorhanden.</translation>
    </message>
    <message>
      <source>What was done since is set aside, not deleted. Close the station afterwards.</source>
      <translation>Was seither getan wurde, wird beiseitegelegt, nicht gelöscht. Danach die Station schließen.</translation>
    </message>
    <message>
      <source>What was in hand is there again, as it was.</source>
      <translation>Was in der Hand war, ist wieder da, wie es war.</translation>
    </message>
    <message>
      <source>What was read of it</source>
      <translation>Was darin gelesen wurde</translation>
    </message>
    <message>
      <source>What was typed is not saved</source>
      <translation>Das Eingegebene ist nicht gespeichert</translation>
    </message>
    <message>
      <source>What was typed is not saved yet</source>
      <translation>Das Eingetippte ist noch nicht gesichert</translation>
    </message>
    <message>
      <source>What went on is on the rack or packed: count it there.</source>
      <translation>Was weiterging, liegt im Regal oder ist gepackt: dort zählen.</translation>
    </message>
    <message>
      <source>What {file} would change</source>
      <translation>Was {file} ändern würde</translation>
    </message>
    <message>
      <source>When it runs again: “The stop is over”.</source>
      <translation>Wenn sie wieder läuft: „Der Halt ist vorbei“.</translation>
    </message>
    <message>
      <source>When it runs again: “{over}”.</source>
      <translation>Wenn sie wieder läuft: „{over}“.</translation>
    </message>
    <message>
      <source>Where it is</source>
      <translation>Wo es ist</translation>
    </message>
    <message>
      <source>Where was it counted?</source>
      <translation>Wo wurde gezählt?</translation>
    </message>
    <message>
      <source>Where was what?</source>
      <translation>Wo war was?</translation>
    </message>
    <message>
      <source>Which backup?</source>
      <translation>Welche Sicherung?</translation>
    </message>
    <message>
      <source>Which batch is counted again?</source>
      <translation>Welches Los wird nachgezählt?</translation>
    </message>
    <message>
      <source>Which batch is held?</source>
      <translation>Welches Los wird gesperrt?</translation>
    </message>
    <message>
      <source>Which batch is split?</source>
      <translation>Welches Los wird aufgeteilt?</translation>
    </message>
    <message>
      <source>Which batch may go on?</source>
      <translation>Welches Los darf weiter?</translation>
    </message>
    <message>
      <source>Which batch needs a new copy?</source>
      <translation>Welches Los braucht eine neue Kopie?</translation>
    </message>
    <message>
      <source>Which batch were they missing from?</source>
      <translation>Bei welchem Los fehlten sie?</translation>
    </message>
    <message>
      <source>Which bit broke?</source>
      <translation>Welcher Fräser ist gebrochen?</translation>
    </message>
    <message>
      <source>Which cart?</source>
      <translation>Welcher Wagen?</translation>
    </message>
    <message>
      <source>Which column is which in {file}?</source>
      <translation>Welche Spalte ist welche in {file}?</translation>
    </message>
    <message>
      <source>Which column is which in {file}? It is kept for the next one</source>
      <translation>Welche Spalte ist welche in {file}? Es bleibt für die nächste</translation>
    </message>
    <message>
      <source>Which file?</source>
      <translation>Welche Datei?</translation>
    </message>
    <message>
      <source>Which is free next</source>
      <translation>Welche wird als Nächste frei</translation>
    </message>
    <message>
      <source>Which is it?</source>
      <translation>Welches ist es?</translation>
    </message>
    <message>
      <source>Which label?</source>
      <translation>Welches Etikett?</translation>
    </message>
    <message>
      <source>Which list is it?</source>
      <translation>Welche Liste ist es?</translation>
    </message>
    <message>
      <source>Which list is {file}?</source>
      <translation>Welche Liste ist {file}?</translation>
    </message>
    <message>
      <source>Which lot is the sheet from?</source>
      <translation>Aus welcher Charge ist die Platte?</translation>
    </message>
    <message>
      <source>Which mailer: can't tell</source>
      <translation>Versandtasche: unklar</translation>
    </message>
    <message>
      <source>Which pack is opened again?</source>
      <translation>Welches Paket wird wieder geöffnet?</translation>
    </message>
    <message>
      <source>Which part is short?</source>
      <translation>Von welchem Teil fehlt etwas?</translation>
    </message>
    <message>
      <source>Which part is spoiled?</source>
      <translation>Welches Teil ist Ausschuss?</translation>
    </message>
    <message>
      <source>Which part is the next shape?</source>
      <translation>Welches Teil ist die nächste Form?</translation>
    </message>
    <message>
      <source>Which part is this shape?</source>
      <translation>Welches Teil ist diese Form?</translation>
    </message>
    <message>
      <source>Which part is this? Touch it, or name a new one</source>
      <translation>Welches Teil ist das? Antippen, oder ein neues benennen</translation>
    </message>
    <message>
      <source>Which part of batch {batch}?</source>
      <translation>Welches Teil von Los {batch}?</translation>
    </message>
    <message>
      <source>Which part was counted?</source>
      <translation>Welches Teil wurde gezählt?</translation>
    </message>
    <message>
      <source>Which part?</source>
      <translation>Welches Teil?</translation>
    </message>
    <message>
      <source>Which printer has {paper}? It is kept for this PC.</source>
      <translation>Welcher Drucker hat {paper}? Das bleibt für diesen PC so.</translation>
    </message>
    <message>
      <source>Which router?</source>
      <translation>Welche Fräse?</translation>
    </message>
    <message>
      <source>Which router? When its queue ends</source>
      <translation>Welche Fräse? Wann ihre Reihe endet</translation>
    </message>
    <message>
      <source>Which supervisor?</source>
      <translation>Welche Aufsicht?</translation>
    </message>
    <message>
      <source>Who counted and why is kept; a supervisor sees it under Needs a look.</source>
      <translation>Wer gezählt hat und warum, wird festgehalten; die Aufsicht sieht es unter „Bitte ansehen“.</translation>
    </message>
    <message>
      <source>Who needs me next</source>
      <translation>Wer braucht mich als Nächstes</translation>
    </message>
    <message>
      <source>Who works here?</source>
      <translation>Wer arbeitet hier?</translation>
    </message>
    <message>
      <source>Whole ones to popping. “{more}” makes good.</source>
      <translation>Heile zum Ausbrechen. „{more}“ macht Ersatz.</translation>
    </message>
    <message>
      <source>Whole sheet</source>
      <translation>Ganze Platte</translation>
    </message>
    <message>
      <source>Why does {router} stand still?</source>
      <translation>Warum steht {router} still?</translation>
    </message>
    <message>
      <source>Why is it cut all the same? Scan or touch a reason.</source>
      <translation>Warum wird trotzdem gefräst? Einen Grund scannen oder berühren.</translation>
    </message>
    <message>
      <source>Why is it settled so?</source>
      <translation>Warum wird es so geklärt?</translation>
    </message>
    <message>
      <source>Why is sheet {n} spoiled?</source>
      <translation>Warum ist Platte {n} Ausschuss?</translation>
    </message>
    <message>
      <source>Why is sheet {sheet} spoiled?</source>
      <translation>Warum ist Platte {sheet} Ausschuss?</translation>
    </message>
    <message>
      <source>Why may batch {batch} go on?</source>
      <translation>Warum darf Los {batch} weiter?</translation>
    </message>
    <message>
      <source>Why?</source>
      <translation>Warum?</translation>
    </message>
    <message>
      <source>Why? Scan or touch a reason.</source>
      <translation>Warum? Grund scannen oder berühren.</translation>
    </message>
    <message>
      <source>With the legs, close to the body; a heavy one by two.</source>
      <translation>Aus den Beinen, nah am Körper; ein schweres zu zweit.</translation>
    </message>
    <message>
      <source>With this work</source>
      <translation>Mit dieser Arbeit</translation>
    </message>
    <message>
      <source>With what line {line} calls, the file has more than {most} million lines. Split it.</source>
      <translation>Mit dem, was Zeile {line} aufruft, hat die Datei mehr als {most} Millionen Zeilen. Sie aufteilen.</translation>
    </message>
    <message>
      <source>With {mark}, {lacks} of the pieces lack until more is there; with {should}: {then}</source>
      <translation>Bei {mark} fehlen {lacks} der Teile, bis mehr da ist; bei {should}: {then}</translation>
    </message>
    <message>
      <source>Work area of this PC</source>
      <translation>Arbeitsbereich dieses PCs</translation>
    </message>
    <message>
      <source>Work at loading</source>
      <translation>Am Beladen arbeiten</translation>
    </message>
    <message>
      <source>Work at packing</source>
      <translation>Am Packen arbeiten</translation>
    </message>
    <message>
      <source>Work at popping</source>
      <translation>Am Ausbrechen arbeiten</translation>
    </message>
    <message>
      <source>Work at the cart</source>
      <translation>Am Wagen arbeiten</translation>
    </message>
    <message>
      <source>Work at trimming</source>
      <translation>Am Verputzen arbeiten</translation>
    </message>
    <message>
      <source>Work of {since} to {until} may be missing</source>
      <translation>Arbeit von {since} bis {until} fehlt vielleicht</translation>
    </message>
    <message>
      <source>Work on.</source>
      <translation>Arbeite weiter.</translation>
    </message>
    <message>
      <source>Work since {since} may be missing</source>
      <translation>Arbeit seit {since} fehlt vielleicht</translation>
    </message>
    <message>
      <source>Work there again to take it back.</source>
      <translation>Dort wieder arbeiten, um es zurückzunehmen.</translation>
    </message>
    <message>
      <source>Work was left in hand: {what}</source>
      <translation>Arbeit blieb liegen: {what}</translation>
    </message>
    <message>
      <source>Worker</source>
      <translation>Mitarbeiter</translation>
    </message>
    <message>
      <source>Worker {id}</source>
      <translation>Mitarbeiter {id}</translation>
    </message>
    <message>
      <source>Worker {id} does not work here</source>
      <translation>Nr. {id} arbeitet hier nicht</translation>
    </message>
    <message>
      <source>Worker {id} has a new PIN</source>
      <translation>Mitarbeiter {id} hat eine neue PIN</translation>
    </message>
    <message>
      <source>Worker {id} is no supervisor</source>
      <translation>Mitarbeiter {id} ist keine Aufsicht</translation>
    </message>
    <message>
      <source>Worker {id} is signed in</source>
      <translation>Mitarbeiter {id} ist angemeldet</translation>
    </message>
    <message>
      <source>Worker {id} is the last supervisor who has a PIN</source>
      <translation>Mitarbeiter {id} ist die letzte Aufsicht mit PIN</translation>
    </message>
    <message>
      <source>Worker {new} takes over from {old}</source>
      <translation>Mitarbeiter {new} übernimmt von {old}</translation>
    </message>
    <message>
      <source>Workers</source>
      <translation>Mitarbeiter</translation>
    </message>
    <message>
      <source>Working out time, parts and what could go wrong</source>
      <translation>Zeit, Teile und was schiefgehen könnte werden berechnet</translation>
    </message>
    <message>
      <source>Write @place 1200 300.</source>
      <translation>@place 1200 300 schreiben.</translation>
    </message>
    <message>
      <source>Write CSV</source>
      <translation>CSV schreiben</translation>
    </message>
    <message>
      <source>Write a CSV file</source>
      <translation>CSV-Datei schreiben</translation>
    </message>
    <message>
      <source>Write it as 2026-11-25 14:00.</source>
      <translation>Als 2026-11-25 14:00 schreiben.</translation>
    </message>
    <message>
      <source>Write it as 2026-11-25T10:42:00.</source>
      <translation>Als 2026-11-25T10:42:00 schreiben.</translation>
    </message>
    <message>
      <source>Write one first.</source>
      <translation>Zuerst eine schreiben.</translation>
    </message>
    <message>
      <source>Write the order list</source>
      <translation>Bestellliste schreiben</translation>
    </message>
    <message>
      <source>X and Y are zero</source>
      <translation>X und Y sind null</translation>
    </message>
    <message>
      <source>Yes, I am sure</source>
      <translation>Ja, ganz sicher</translation>
    </message>
    <message>
      <source>Z is zero</source>
      <translation>Z ist null</translation>
    </message>
    <message>
      <source>Zero</source>
      <translation>Nullpunkt</translation>
    </message>
    <message>
      <source>Zero is not set yet</source>
      <translation>Nullpunkt ist noch nicht gesetzt</translation>
    </message>
    <message>
      <source>Zero is set</source>
      <translation>Nullpunkt ist gesetzt</translation>
    </message>
    <message>
      <source>Zero is set anew</source>
      <translation>Nullpunkt ist neu gesetzt</translation>
    </message>
    <message>
      <source>Zero is set anew on {router}</source>
      <translation>Nullpunkt auf {router} ist neu gesetzt</translation>
    </message>
    <message>
      <source>Zero is set for {why}</source>
      <translation>Null ist gesetzt für {why}</translation>
    </message>
    <message>
      <source>Zero, before it goes on</source>
      <translation>Null, bevor es weitergeht</translation>
    </message>
    <message>
      <source>a bit it takes</source>
      <translation>ein Fräser dafür</translation>
    </message>
    <message>
      <source>a closed pack is opened</source>
      <translation>ein geschlossenes Paket wird geöffnet</translation>
    </message>
    <message>
      <source>a count is corrected</source>
      <translation>eine Zahl wird berichtigt</translation>
    </message>
    <message>
      <source>a heavy sheet</source>
      <translation>eine schwere Platte</translation>
    </message>
    <message>
      <source>a number now changes the {n} × {part}</source>
      <translation>eine Zahl ändert jetzt {n} × {part}</translation>
    </message>
    <message>
      <source>a peck comes back to 1 mm</source>
      <translation>ein Bohrhub geht bis 1 mm zurück</translation>
    </message>
    <message>
      <source>a semicolon begins no remark</source>
      <translation>ein Strichpunkt beginnt keine Bemerkung</translation>
    </message>
    <message>
      <source>a set</source>
      <translation>ein Satz</translation>
    </message>
    <message>
      <source>a sheet</source>
      <translation>je Platte</translation>
    </message>
    <message>
      <source>a sheet of {material} from lot {lot}</source>
      <translation>eine Platte {material} aus Charge {lot}</translation>
    </message>
    <message>
      <source>a sheet of {material}: the store has none by the book</source>
      <translation>eine Platte {material}: laut Buch liegt keine im Lager</translation>
    </message>
    <message>
      <source>a small part</source>
      <translation>ein kleines Teil</translation>
    </message>
    <message>
      <source>a supervisor overrules</source>
      <translation>eine Aufsicht entscheidet anders</translation>
    </message>
    <message>
      <source>a {size} mm bit: none is ready in the drawer</source>
      <translation>ein Fräser {size} mm: keiner liegt bereit in der Schublade</translation>
    </message>
    <message>
      <source>about</source>
      <translation>etwa</translation>
    </message>
    <message>
      <source>about {at}</source>
      <translation>etwa {at}</translation>
    </message>
    <message>
      <source>about {g} g</source>
      <translation>etwa {g} g</translation>
    </message>
    <message>
      <source>about {kg} kg on it</source>
      <translation>etwa {kg} kg darauf</translation>
    </message>
    <message>
      <source>above 0</source>
      <translation>über 0</translation>
    </message>
    <message>
      <source>accel</source>
      <translation>Beschleunigung</translation>
    </message>
    <message>
      <source>accel y</source>
      <translation>Beschleunigung y</translation>
    </message>
    <message>
      <source>accel z</source>
      <translation>Beschleunigung z</translation>
    </message>
    <message>
      <source>all areas</source>
      <translation>alle Bereiche</translation>
    </message>
    <message>
      <source>all cut by</source>
      <translation>alles gefräst bis</translation>
    </message>
    <message>
      <source>all parts are there</source>
      <translation>alles ist da</translation>
    </message>
    <message>
      <source>all routers stopped</source>
      <translation>alle Fräsen stehen</translation>
    </message>
    <message>
      <source>alone runs it now</source>
      <translation>fräst es jetzt allein</translation>
    </message>
    <message>
      <source>an order takes {n}</source>
      <translation>eine Bestellung dauert {n}</translation>
    </message>
    <message>
      <source>and</source>
      <translation>und</translation>
    </message>
    <message>
      <source>and {n} more, see the order</source>
      <translation>und {n} weitere, siehe Auftrag</translation>
    </message>
    <message>
      <source>another bit</source>
      <translation>anderer Fräser</translation>
    </message>
    <message>
      <source>another mailer is taken</source>
      <translation>eine andere Versandtasche wird genommen</translation>
    </message>
    <message>
      <source>another revision is approved</source>
      <translation>eine andere Revision ist freigegeben</translation>
    </message>
    <message>
      <source>answer</source>
      <translation>Antwort</translation>
    </message>
    <message>
      <source>anywhere</source>
      <translation>überall</translation>
    </message>
    <message>
      <source>approve it</source>
      <translation>freigeben</translation>
    </message>
    <message>
      <source>approved</source>
      <translation>freigegeben</translation>
    </message>
    <message>
      <source>area</source>
      <translation>Bereich</translation>
    </message>
    <message>
      <source>areas</source>
      <translation>Bereiche</translation>
    </message>
    <message>
      <source>as a remark in the text says</source>
      <translation>wie eine Bemerkung im Text sagt</translation>
    </message>
    <message>
      <source>as in the changer</source>
      <translation>wie im Wechsler</translation>
    </message>
    <message>
      <source>as most files here</source>
      <translation>wie die meisten hier</translation>
    </message>
    <message>
      <source>as most routers</source>
      <translation>wie die meisten Fräsen</translation>
    </message>
    <message>
      <source>as of {at}</source>
      <translation>Stand {at}</translation>
    </message>
    <message>
      <source>as of {at} · {what}, {n} %</source>
      <translation>Stand {at} · {what}, {n} %</translation>
    </message>
    <message>
      <source>as of {time}</source>
      <translation>Stand {time}</translation>
    </message>
    <message>
      <source>as the text says</source>
      <translation>wie der Text sagt</translation>
    </message>
    <message>
      <source>as usual on this router</source>
      <translation>wie üblich an dieser Fräse</translation>
    </message>
    <message>
      <source>ask for a sheet</source>
      <translation>Platte erbitten</translation>
    </message>
    <message>
      <source>assumed from the path</source>
      <translation>aus der Bahn angenommen</translation>
    </message>
    <message>
      <source>at</source>
      <translation>um</translation>
    </message>
    <message>
      <source>at its centre</source>
      <translation>in ihrer Mitte</translation>
    </message>
    <message>
      <source>at its lower left corner</source>
      <translation>an ihrer Ecke unten links</translation>
    </message>
    <message>
      <source>at its lower right corner</source>
      <translation>an ihrer Ecke unten rechts</translation>
    </message>
    <message>
      <source>at its upper left corner</source>
      <translation>an ihrer Ecke oben links</translation>
    </message>
    <message>
      <source>at its upper right corner</source>
      <translation>an ihrer Ecke oben rechts</translation>
    </message>
    <message>
      <source>at least {kg} kg on it, {n} {n|pack|packs} of unknown weight</source>
      <translation>mindestens {kg} kg darauf, {n} {n|Paket|Pakete} von unbekanntem Gewicht</translation>
    </message>
    <message>
      <source>at short notice</source>
      <translation>kurzfristig</translation>
    </message>
    <message>
      <source>at the bed</source>
      <translation>am Tisch</translation>
    </message>
    <message>
      <source>at the door</source>
      <translation>an der Tür</translation>
    </message>
    <message>
      <source>at the door: {seen} of {n} seen · {kilos}</source>
      <translation>an der Tür: {seen} von {n} gesehen · {kilos}</translation>
    </message>
    <message>
      <source>at the face of the sheet</source>
      <translation>auf der Oberseite der Platte</translation>
    </message>
    <message>
      <source>at the laser</source>
      <translation>am Laser</translation>
    </message>
    <message>
      <source>at the router table</source>
      <translation>am Frästisch</translation>
    </message>
    <message>
      <source>at the spoilboard</source>
      <translation>auf der Opferplatte</translation>
    </message>
    <message>
      <source>away</source>
      <translation>draußen</translation>
    </message>
    <message>
      <source>backup</source>
      <translation>Sicherung</translation>
    </message>
    <message>
      <source>backup of</source>
      <translation>Sicherung von</translation>
    </message>
    <message>
      <source>badges</source>
      <translation>Ausweise</translation>
    </message>
    <message>
      <source>batch</source>
      <translation>Los</translation>
    </message>
    <message>
      <source>batch {batch}</source>
      <translation>Los {batch}</translation>
    </message>
    <message>
      <source>batch {batch} is cut from it</source>
      <translation>Los {batch} wird daraus gefräst</translation>
    </message>
    <message>
      <source>batch {batch} is on it</source>
      <translation>Los {batch} ist darauf</translation>
    </message>
    <message>
      <source>batch {batch} is taken on</source>
      <translation>Los {batch} ist übernommen</translation>
    </message>
    <message>
      <source>batch {batch}, sheet {n} of {sheets}</source>
      <translation>Los {batch}, Platte {n} von {sheets}</translation>
    </message>
    <message>
      <source>batch {batch}, sheet {n}: {why}</source>
      <translation>Los {batch}, Platte {n}: {why}</translation>
    </message>
    <message>
      <source>batch {batch}, sheet {sheet} on it</source>
      <translation>Los {batch}, Platte {sheet} darauf</translation>
    </message>
    <message>
      <source>because</source>
      <translation>weil</translation>
    </message>
    <message>
      <source>bed</source>
      <translation>Bett</translation>
    </message>
    <message>
      <source>bed clear</source>
      <translation>Bett frei</translation>
    </message>
    <message>
      <source>bed of router {number}</source>
      <translation>Tisch von Fräse {number}</translation>
    </message>
    <message>
      <source>before</source>
      <translation>früher</translation>
    </message>
    <message>
      <source>begins</source>
      <translation>beginnt</translation>
    </message>
    <message>
      <source>being packed</source>
      <translation>beim Packen</translation>
    </message>
    <message>
      <source>below its minimum</source>
      <translation>unter Mindestbestand</translation>
    </message>
    <message>
      <source>between packed parts</source>
      <translation>zwischen gepackten Teilen</translation>
    </message>
    <message>
      <source>between two runs</source>
      <translation>zwischen zwei Durchgängen</translation>
    </message>
    <message>
      <source>bit</source>
      <translation>Fräser</translation>
    </message>
    <message>
      <source>bit broke</source>
      <translation>Fräser gebrochen</translation>
    </message>
    <message>
      <source>bit no. {bit}, {size} mm, from the drawer</source>
      <translation>Fräser Nr. {bit}, {size} mm, aus der Schublade</translation>
    </message>
    <message>
      <source>bit out</source>
      <translation>Fräser heraus</translation>
    </message>
    <message>
      <source>bit size</source>
      <translation>Fräsergröße</translation>
    </message>
    <message>
      <source>bit told at</source>
      <translation>Fräser gemeldet ab</translation>
    </message>
    <message>
      <source>bit {bit}</source>
      <translation>Fräser {bit}</translation>
    </message>
    <message>
      <source>bit {bit} broke</source>
      <translation>Fräser {bit} gebrochen</translation>
    </message>
    <message>
      <source>bit {bit} is in it</source>
      <translation>Fräser {bit} steckt darin</translation>
    </message>
    <message>
      <source>bit {number}</source>
      <translation>Fräser {number}</translation>
    </message>
    <message>
      <source>bits of this shop</source>
      <translation>Fräser dieser Werkstatt</translation>
    </message>
    <message>
      <source>bits {bits} {unit}</source>
      <translation>Fräser {bits} {unit}</translation>
    </message>
    <message>
      <source>blank</source>
      <translation>Leerzeichen</translation>
    </message>
    <message>
      <source>blocks {n} or more orders</source>
      <translation>hält {n} oder mehr Aufträge auf</translation>
    </message>
    <message>
      <source>blocks {n} {n|order|orders}</source>
      <translation>hält {n} {n|Auftrag|Aufträge} auf</translation>
    </message>
    <message>
      <source>book was wrong</source>
      <translation>Buch war falsch</translation>
    </message>
    <message>
      <source>bottom edge at {at} mm</source>
      <translation>Unterkante bei {at} mm</translation>
    </message>
    <message>
      <source>bottom left</source>
      <translation>unten links</translation>
    </message>
    <message>
      <source>bottom middle</source>
      <translation>unten Mitte</translation>
    </message>
    <message>
      <source>bottom right</source>
      <translation>unten rechts</translation>
    </message>
    <message>
      <source>bought</source>
      <translation>gekauft</translation>
    </message>
    <message>
      <source>box</source>
      <translation>Schachtel</translation>
    </message>
    <message>
      <source>break begins</source>
      <translation>Pause beginnt</translation>
    </message>
    <message>
      <source>break ends</source>
      <translation>Pause endet</translation>
    </message>
    <message>
      <source>breaks</source>
      <translation>Pausen</translation>
    </message>
    <message>
      <source>breaks bit</source>
      <translation>Fräser bricht</translation>
    </message>
    <message>
      <source>broken</source>
      <translation>gebrochen</translation>
    </message>
    <message>
      <source>button</source>
      <translation>Knopf</translation>
    </message>
    <message>
      <source>by</source>
      <translation>von</translation>
    </message>
    <message>
      <source>by the book</source>
      <translation>laut Buch</translation>
    </message>
    <message>
      <source>by worker {worker}</source>
      <translation>von Mitarbeiter {worker}</translation>
    </message>
    <message>
      <source>by {day}</source>
      <translation>bis {day}</translation>
    </message>
    <message>
      <source>came</source>
      <translation>kam</translation>
    </message>
    <message>
      <source>can't tell yet</source>
      <translation>noch nicht zu sagen</translation>
    </message>
    <message>
      <source>can't tell yet: {so_far}; as typed till then</source>
      <translation>noch nicht zu sagen: {so_far}; bis dahin wie eingetippt</translation>
    </message>
    <message>
      <source>can't tell: {part}</source>
      <translation>unklar: {part}</translation>
    </message>
    <message>
      <source>cancelled</source>
      <translation>storniert</translation>
    </message>
    <message>
      <source>cancelled: to packing</source>
      <translation>storniert: zum Packen</translation>
    </message>
    <message>
      <source>capitals</source>
      <translation>Großbuchstaben</translation>
    </message>
    <message>
      <source>card</source>
      <translation>Karte</translation>
    </message>
    <message>
      <source>cards of buttons</source>
      <translation>Karten der Tasten</translation>
    </message>
    <message>
      <source>cards of parts</source>
      <translation>Karten der Teile</translation>
    </message>
    <message>
      <source>cards of routers, bits, lots, carts, mailers and cut files</source>
      <translation>Karten der Fräsen, Fräser, Chargen, Wagen, Versandtaschen und Fräsdateien</translation>
    </message>
    <message>
      <source>cart</source>
      <translation>Wagen</translation>
    </message>
    <message>
      <source>cart {number}</source>
      <translation>Wagen {number}</translation>
    </message>
    <message>
      <source>cart, goes at {time}</source>
      <translation>Wagen, fährt um {time}</translation>
    </message>
    <message>
      <source>caution</source>
      <translation>Warnung</translation>
    </message>
    <message>
      <source>change</source>
      <translation>Werkzeugwechsel</translation>
    </message>
    <message>
      <source>change after sheet {n}</source>
      <translation>nach Platte {n} wechseln</translation>
    </message>
    <message>
      <source>changed: {id}, {what}</source>
      <translation>geändert: {id}, {what}</translation>
    </message>
    <message>
      <source>changer</source>
      <translation>Wechsler</translation>
    </message>
    <message>
      <source>changing a bit</source>
      <translation>Fräserwechsel</translation>
    </message>
    <message>
      <source>changing the table's bit</source>
      <translation>den Fräser am Tisch wechseln</translation>
    </message>
    <message>
      <source>check</source>
      <translation>Prüfung</translation>
    </message>
    <message>
      <source>check every</source>
      <translation>prüfen jedes</translation>
    </message>
    <message>
      <source>chipped edge</source>
      <translation>Kante abgesplittert</translation>
    </message>
    <message>
      <source>choices</source>
      <translation>zur Wahl</translation>
    </message>
    <message>
      <source>chosen in the office</source>
      <translation>im Büro gewählt</translation>
    </message>
    <message>
      <source>clamp to cut</source>
      <translation>Klemme bis Schnitt</translation>
    </message>
    <message>
      <source>clamped</source>
      <translation>Spannbett</translation>
    </message>
    <message>
      <source>clamped bed</source>
      <translation>Spanntisch</translation>
    </message>
    <message>
      <source>clear</source>
      <translation>löschen</translation>
    </message>
    <message>
      <source>closed days</source>
      <translation>freie Tage</translation>
    </message>
    <message>
      <source>closed {at} by worker {by}</source>
      <translation>geschlossen {at} von Mitarbeiter {by}</translation>
    </message>
    <message>
      <source>column</source>
      <translation>Spalte</translation>
    </message>
    <message>
      <source>copy {copy}</source>
      <translation>Exemplar {copy}</translation>
    </message>
    <message>
      <source>corner</source>
      <translation>Ecke</translation>
    </message>
    <message>
      <source>correct</source>
      <translation>Zählung berichtigen</translation>
    </message>
    <message>
      <source>costs {n}</source>
      <translation>kostet {n}</translation>
    </message>
    <message>
      <source>counted</source>
      <translation>gezählt</translation>
    </message>
    <message>
      <source>counted again</source>
      <translation>nachgezählt</translation>
    </message>
    <message>
      <source>crushed corner</source>
      <translation>Ecke eingedrückt</translation>
    </message>
    <message>
      <source>cut</source>
      <translation>gefräst</translation>
    </message>
    <message>
      <source>cut file</source>
      <translation>Fräsdatei</translation>
    </message>
    <message>
      <source>cut for</source>
      <translation>gefräst für</translation>
    </message>
    <message>
      <source>cut it again</source>
      <translation>noch einmal fräsen</translation>
    </message>
    <message>
      <source>cut it flat again</source>
      <translation>wieder plan fräsen</translation>
    </message>
    <message>
      <source>cut more below</source>
      <translation>nachfräsen unter</translation>
    </message>
    <message>
      <source>cutfile</source>
      <translation>Fräsdatei</translation>
    </message>
    <message>
      <source>cutting</source>
      <translation>fräst</translation>
    </message>
    <message>
      <source>cutting {batch}, sheet {sheet}, free in {left} min</source>
      <translation>fräst {batch}, Platte {sheet}, frei in {left} min</translation>
    </message>
    <message>
      <source>damage</source>
      <translation>Schaden</translation>
    </message>
    <message>
      <source>damaged in handling</source>
      <translation>beim Handhaben beschädigt</translation>
    </message>
    <message>
      <source>damaged on the way</source>
      <translation>unterwegs beschädigt</translation>
    </message>
    <message>
      <source>damaged, packed so</source>
      <translation>beschädigt, so gepackt</translation>
    </message>
    <message>
      <source>day</source>
      <translation>Tag</translation>
    </message>
    <message>
      <source>day checks</source>
      <translation>Prüfungen am Morgen</translation>
    </message>
    <message>
      <source>day ends</source>
      <translation>Tag endet</translation>
    </message>
    <message>
      <source>day starts</source>
      <translation>Tag beginnt</translation>
    </message>
    <message>
      <source>days of stock</source>
      <translation>Tage Vorrat</translation>
    </message>
    <message>
      <source>deepest pass, bit widths</source>
      <translation>tiefster Gang, Fräserbreiten</translation>
    </message>
    <message>
      <source>density</source>
      <translation>Dichte</translation>
    </message>
    <message>
      <source>description</source>
      <translation>Beschreibung</translation>
    </message>
    <message>
      <source>diameter</source>
      <translation>Durchmesser</translation>
    </message>
    <message>
      <source>differs a little</source>
      <translation>etwas anders</translation>
    </message>
    <message>
      <source>digit</source>
      <translation>Ziffer</translation>
    </message>
    <message>
      <source>disk</source>
      <translation>Festplatte</translation>
    </message>
    <message>
      <source>does not fit</source>
      <translation>passt nicht</translation>
    </message>
    <message>
      <source>done</source>
      <translation>erledigt</translation>
    </message>
    <message>
      <source>door</source>
      <translation>an der Tür</translation>
    </message>
    <message>
      <source>drop it</source>
      <translation>streichen</translation>
    </message>
    <message>
      <source>due</source>
      <translation>fällig</translation>
    </message>
    <message>
      <source>due {at}</source>
      <translation>fällig {at}</translation>
    </message>
    <message>
      <source>due {day} {at}</source>
      <translation>fällig {day} {at}</translation>
    </message>
    <message>
      <source>due {due}</source>
      <translation>fällig {due}</translation>
    </message>
    <message>
      <source>dust</source>
      <translation>Staub</translation>
    </message>
    <message>
      <source>ends</source>
      <translation>endet</translation>
    </message>
    <message>
      <source>engraving</source>
      <translation>Gravur</translation>
    </message>
    <message>
      <source>enough with</source>
      <translation>genug mit</translation>
    </message>
    <message>
      <source>entered as a new order</source>
      <translation>als neuer Auftrag eingetragen</translation>
    </message>
    <message>
      <source>entries</source>
      <translation>Einträge</translation>
    </message>
    <message>
      <source>every station</source>
      <translation>jede Station</translation>
    </message>
    <message>
      <source>expected</source>
      <translation>erwartet</translation>
    </message>
    <message>
      <source>expected to sell</source>
      <translation>erwarteter Verkauf</translation>
    </message>
    <message>
      <source>extra</source>
      <translation>Zuschlag</translation>
    </message>
    <message>
      <source>extraction</source>
      <translation>Absaugung</translation>
    </message>
    <message>
      <source>face</source>
      <translation>Oberseite</translation>
    </message>
    <message>
      <source>false weight alarms</source>
      <translation>falsche Gewichtsalarme</translation>
    </message>
    <message>
      <source>fastest plunge</source>
      <translation>schnellstes Eintauchen</translation>
    </message>
    <message>
      <source>feeding a part</source>
      <translation>ein Teil führen</translation>
    </message>
    <message>
      <source>field</source>
      <translation>Feld</translation>
    </message>
    <message>
      <source>file</source>
      <translation>Datei</translation>
    </message>
    <message>
      <source>file says {file}, {router} runs it in {real}</source>
      <translation>Datei sagt {file}, {router} braucht {real}</translation>
    </message>
    <message>
      <source>file {file}</source>
      <translation>Datei {file}</translation>
    </message>
    <message>
      <source>file {file}, here {real} ± {spread}</source>
      <translation>Datei {file}, hier {real} ± {spread}</translation>
    </message>
    <message>
      <source>first at</source>
      <translation>zuerst bei</translation>
    </message>
    <message>
      <source>first leaves {time}</source>
      <translation>der erste geht {time}</translation>
    </message>
    <message>
      <source>first off</source>
      <translation>Erstteil</translation>
    </message>
    <message>
      <source>first sheet of {run}</source>
      <translation>erste Platte von {run}</translation>
    </message>
    <message>
      <source>first-off is due of sheet {n}</source>
      <translation>Erstteil von Platte {n} ist fällig</translation>
    </message>
    <message>
      <source>first-off {state}</source>
      <translation>Erstteil {state}</translation>
    </message>
    <message>
      <source>flutes</source>
      <translation>Schneiden</translation>
    </message>
    <message>
      <source>folder</source>
      <translation>Ordner</translation>
    </message>
    <message>
      <source>for all</source>
      <translation>für alle</translation>
    </message>
    <message>
      <source>for order {order}</source>
      <translation>für Auftrag {order}</translation>
    </message>
    <message>
      <source>for packs ahead and own pushes</source>
      <translation>für Vorrat gepackt und eigene Anläufe</translation>
    </message>
    <message>
      <source>for the rack</source>
      <translation>fürs Regal</translation>
    </message>
    <message>
      <source>for {n} {n|order|orders}</source>
      <translation>für {n} {n|Auftrag|Aufträge}</translation>
    </message>
    <message>
      <source>for {part}</source>
      <translation>für {part}</translation>
    </message>
    <message>
      <source>form</source>
      <translation>Form</translation>
    </message>
    <message>
      <source>found</source>
      <translation>gefunden</translation>
    </message>
    <message>
      <source>found elsewhere</source>
      <translation>woanders gefunden</translation>
    </message>
    <message>
      <source>found {n}</source>
      <translation>{n} gefunden</translation>
    </message>
    <message>
      <source>free</source>
      <translation>frei</translation>
    </message>
    <message>
      <source>free in {n} min</source>
      <translation>frei in {n} min</translation>
    </message>
    <message>
      <source>free now</source>
      <translation>jetzt frei</translation>
    </message>
    <message>
      <source>from order {order}</source>
      <translation>aus Auftrag {order}</translation>
    </message>
    <message>
      <source>from {here} to {there}: {cut} m</source>
      <translation>von {here} nach {there}: {cut} m</translation>
    </message>
    <message>
      <source>from {here} to {there}: {n} {part}</source>
      <translation>von {here} nach {there}: {n} {part}</translation>
    </message>
    <message>
      <source>given as a sample</source>
      <translation>als Probe vergeben</translation>
    </message>
    <message>
      <source>goes as</source>
      <translation>geht als</translation>
    </message>
    <message>
      <source>goes to</source>
      <translation>geht an</translation>
    </message>
    <message>
      <source>goes {at}</source>
      <translation>fährt {at}</translation>
    </message>
    <message>
      <source>gone</source>
      <translation>fort</translation>
    </message>
    <message>
      <source>good</source>
      <translation>gut</translation>
    </message>
    <message>
      <source>good ones wanted</source>
      <translation>gute verlangt</translation>
    </message>
    <message>
      <source>handover sheet of worker</source>
      <translation>Übergabeblatt von Mitarbeiter</translation>
    </message>
    <message>
      <source>hands off, everybody clear of it</source>
      <translation>Hände weg, alle weit genug davon</translation>
    </message>
    <message>
      <source>hands over: worker, time</source>
      <translation>übergibt: Nr., Uhrzeit</translation>
    </message>
    <message>
      <source>height between two lines: parts waiting · width: how long they wait</source>
      <translation>Höhe zwischen zwei Linien: wartende Teile · Breite: wie lange sie warten</translation>
    </message>
    <message>
      <source>held</source>
      <translation>gesperrt</translation>
    </message>
    <message>
      <source>held piece</source>
      <translation>gesperrtes Teil</translation>
    </message>
    <message>
      <source>held: take it off</source>
      <translation>gesperrt: abladen</translation>
    </message>
    <message>
      <source>held: {why}</source>
      <translation>gesperrt: {why}</translation>
    </message>
    <message>
      <source>here</source>
      <translation>hier</translation>
    </message>
    <message>
      <source>high</source>
      <translation>höchstens</translation>
    </message>
    <message>
      <source>high stubs</source>
      <translation>Stege zu hoch</translation>
    </message>
    <message>
      <source>history checked</source>
      <translation>Verlauf geprüft</translation>
    </message>
    <message>
      <source>history to {witness}</source>
      <translation>Verlauf bis {witness}</translation>
    </message>
    <message>
      <source>hold down</source>
      <translation>Niederhalter</translation>
    </message>
    <message>
      <source>hold downs</source>
      <translation>Niederhalter</translation>
    </message>
    <message>
      <source>hold-down</source>
      <translation>Niederhalter</translation>
    </message>
    <message>
      <source>hold-downs</source>
      <translation>Niederhalter</translation>
    </message>
    <message>
      <source>hold-downs set</source>
      <translation>Niederhalter gesetzt</translation>
    </message>
    <message>
      <source>homing</source>
      <translation>Referenzfahrt</translation>
    </message>
    <message>
      <source>in closed packs</source>
      <translation>in geschlossenen Paketen</translation>
    </message>
    <message>
      <source>in front of you</source>
      <translation>vor Ihnen</translation>
    </message>
    <message>
      <source>in inches</source>
      <translation>in Zoll</translation>
    </message>
    <message>
      <source>in millimetres</source>
      <translation>in Millimetern</translation>
    </message>
    <message>
      <source>in no column</source>
      <translation>in keiner Spalte</translation>
    </message>
    <message>
      <source>in open packs</source>
      <translation>in offenen Paketen</translation>
    </message>
    <message>
      <source>in the drawer</source>
      <translation>in der Schublade</translation>
    </message>
    <message>
      <source>in the pack</source>
      <translation>im Paket</translation>
    </message>
    <message>
      <source>in the shop</source>
      <translation>in der Werkstatt</translation>
    </message>
    <message>
      <source>in use</source>
      <translation>in Gebrauch</translation>
    </message>
    <message>
      <source>in {router}</source>
      <translation>in {router}</translation>
    </message>
    <message>
      <source>inch</source>
      <translation>Zoll</translation>
    </message>
    <message>
      <source>inches</source>
      <translation>Zoll</translation>
    </message>
    <message>
      <source>inches as fractions</source>
      <translation>Zoll als Brüche</translation>
    </message>
    <message>
      <source>is not in the router</source>
      <translation>ist nicht in der Fräse</translation>
    </message>
    <message>
      <source>is on {cart}</source>
      <translation>ist auf {cart}</translation>
    </message>
    <message>
      <source>it belongs to {product}</source>
      <translation>es gehört zu {product}</translation>
    </message>
    <message>
      <source>it cannot be read</source>
      <translation>er ist nicht lesbar</translation>
    </message>
    <message>
      <source>it is at the door</source>
      <translation>er steht an der Tür</translation>
    </message>
    <message>
      <source>it is free</source>
      <translation>er ist frei</translation>
    </message>
    <message>
      <source>it is free, batch {batch} is taken on</source>
      <translation>er ist frei, Los {batch} ist übernommen</translation>
    </message>
    <message>
      <source>it is here</source>
      <translation>er ist hier</translation>
    </message>
    <message>
      <source>it is in {router}</source>
      <translation>er steckt in {router}</translation>
    </message>
    <message>
      <source>it is popped</source>
      <translation>sie ist ausgebrochen</translation>
    </message>
    <message>
      <source>it is spoiled</source>
      <translation>sie ist Ausschuss</translation>
    </message>
    <message>
      <source>it is {state}</source>
      <translation>sie ist {state}</translation>
    </message>
    <message>
      <source>it left</source>
      <translation>er ist fort</translation>
    </message>
    <message>
      <source>it lies as before and does not move</source>
      <translation>sie liegt wie vorher und rührt sich nicht</translation>
    </message>
    <message>
      <source>it needs, flat</source>
      <translation>es braucht, flach</translation>
    </message>
    <message>
      <source>it needs, inside</source>
      <translation>es braucht, innen</translation>
    </message>
    <message>
      <source>it waits for its next run</source>
      <translation>sie wartet auf ihren nächsten Lauf</translation>
    </message>
    <message>
      <source>it waits: {why}</source>
      <translation>es wartet: {why}</translation>
    </message>
    <message>
      <source>it was changed</source>
      <translation>es wurde geändert</translation>
    </message>
    <message>
      <source>it was forgotten</source>
      <translation>sie war vergessen</translation>
    </message>
    <message>
      <source>its digest does not match</source>
      <translation>seine Prüfsumme stimmt nicht</translation>
    </message>
    <message>
      <source>its minimum {mark} is too low</source>
      <translation>Mindestbestand {mark} zu niedrig</translation>
    </message>
    <message>
      <source>its pieces</source>
      <translation>seine Stücke</translation>
    </message>
    <message>
      <source>its place</source>
      <translation>ihr Platz</translation>
    </message>
    <message>
      <source>its weight is not known</source>
      <translation>sein Gewicht ist nicht bekannt</translation>
    </message>
    <message>
      <source>keep it</source>
      <translation>gesperrt lassen</translation>
    </message>
    <message>
      <source>keep the lot</source>
      <translation>Charge behalten</translation>
    </message>
    <message>
      <source>kept apart</source>
      <translation>beiseitegelegt</translation>
    </message>
    <message>
      <source>kept from the last sheet</source>
      <translation>von der letzten Platte behalten</translation>
    </message>
    <message>
      <source>kind</source>
      <translation>Art</translation>
    </message>
    <message>
      <source>label of pack</source>
      <translation>Etikett des Pakets</translation>
    </message>
    <message>
      <source>labels</source>
      <translation>Etiketten</translation>
    </message>
    <message>
      <source>laser</source>
      <translation>Laser</translation>
    </message>
    <message>
      <source>last left {at}</source>
      <translation>zuletzt ab {at}</translation>
    </message>
    <message>
      <source>last recorded</source>
      <translation>zuletzt erfasst</translation>
    </message>
    <message>
      <source>last scan</source>
      <translation>letzter Scan</translation>
    </message>
    <message>
      <source>lasts {n} worked days</source>
      <translation>reicht {n} Arbeitstage</translation>
    </message>
    <message>
      <source>late now</source>
      <translation>jetzt verspätet</translation>
    </message>
    <message>
      <source>late: due {due}</source>
      <translation>verspätet: fällig {due}</translation>
    </message>
    <message>
      <source>late: {at}</source>
      <translation>verspätet: {at}</translation>
    </message>
    <message>
      <source>later</source>
      <translation>später</translation>
    </message>
    <message>
      <source>lead days</source>
      <translation>Liefertage</translation>
    </message>
    <message>
      <source>least chip load</source>
      <translation>Spandicke mindestens</translation>
    </message>
    <message>
      <source>least tab height</source>
      <translation>Steghöhe mindestens</translation>
    </message>
    <message>
      <source>least tab width</source>
      <translation>Stegbreite mindestens</translation>
    </message>
    <message>
      <source>leaves about {day}</source>
      <translation>geht etwa {day}</translation>
    </message>
    <message>
      <source>leaves at</source>
      <translation>fährt um</translation>
    </message>
    <message>
      <source>leaves {day}</source>
      <translation>geht {day}</translation>
    </message>
    <message>
      <source>leaves {day}, the rest {then}</source>
      <translation>geht {day}, der Rest {then}</translation>
    </message>
    <message>
      <source>leaves {due}</source>
      <translation>geht {due} ab</translation>
    </message>
    <message>
      <source>leaves {time}</source>
      <translation>geht {time}</translation>
    </message>
    <message>
      <source>left</source>
      <translation>abgefahren</translation>
    </message>
    <message>
      <source>left as it is</source>
      <translation>so gelassen</translation>
    </message>
    <message>
      <source>left edge at {at} mm</source>
      <translation>linke Kante bei {at} mm</translation>
    </message>
    <message>
      <source>left on this sheet</source>
      <translation>noch an dieser Platte</translation>
    </message>
    <message>
      <source>left {at}</source>
      <translation>ging {at}</translation>
    </message>
    <message>
      <source>left, all parts are owed</source>
      <translation>gegangen, alles davon wird geschuldet</translation>
    </message>
    <message>
      <source>length</source>
      <translation>Länge</translation>
    </message>
    <message>
      <source>length and girth</source>
      <translation>Länge und Gurtmaß</translation>
    </message>
    <message>
      <source>let it go on</source>
      <translation>freigeben</translation>
    </message>
    <message>
      <source>letter</source>
      <translation>Buchstabe</translation>
    </message>
    <message>
      <source>lies on shelf {place}</source>
      <translation>liegt in Vorratsfach {place}</translation>
    </message>
    <message>
      <source>lies on the shelf</source>
      <translation>liegt im Vorrat</translation>
    </message>
    <message>
      <source>life</source>
      <translation>Standweg</translation>
    </message>
    <message>
      <source>lifted clear of sheet and hold-downs</source>
      <translation>frei über Platte und Niederhaltern</translation>
    </message>
    <message>
      <source>lifting a pack</source>
      <translation>ein Paket heben</translation>
    </message>
    <message>
      <source>lifting a sheet</source>
      <translation>Platte heben</translation>
    </message>
    <message>
      <source>line 1: column {twice} stands there twice</source>
      <translation>Zeile 1: die Spalte {twice} steht zweimal da</translation>
    </message>
    <message>
      <source>line 1: the column id is missing</source>
      <translation>Zeile 1: die Spalte id fehlt</translation>
    </message>
    <message>
      <source>line 1: this list has no column {strange}; its columns are {names}</source>
      <translation>Zeile 1: diese Liste hat keine Spalte {strange}; ihre Spalten sind {names}</translation>
    </message>
    <message>
      <source>line 1: “{header}” is the header of no list. Write the list out once and see.</source>
      <translation>Zeile 1: „{header}“ ist der Kopf keiner Liste. Liste einmal schreiben und nachsehen.</translation>
    </message>
    <message>
      <source>line {n}: {what}</source>
      <translation>Zeile {n}: {what}</translation>
    </message>
    <message>
      <source>lines</source>
      <translation>Zeilen</translation>
    </message>
    <message>
      <source>lines with a slash are run</source>
      <translation>Zeilen mit Schrägstrich laufen mit</translation>
    </message>
    <message>
      <source>list of cart</source>
      <translation>Liste von Wagen</translation>
    </message>
    <message>
      <source>loading</source>
      <translation>belädt</translation>
    </message>
    <message>
      <source>loading {batch}</source>
      <translation>belädt {batch}</translation>
    </message>
    <message>
      <source>loading · {kilos}</source>
      <translation>wird beladen · {kilos}</translation>
    </message>
    <message>
      <source>longer than expected</source>
      <translation>länger als erwartet</translation>
    </message>
    <message>
      <source>longest</source>
      <translation>Länge höchstens</translation>
    </message>
    <message>
      <source>look at board</source>
      <translation>Opferplatte ansehen</translation>
    </message>
    <message>
      <source>look at it</source>
      <translation>ansehen</translation>
    </message>
    <message>
      <source>look twice</source>
      <translation>genau ansehen</translation>
    </message>
    <message>
      <source>looked at, good</source>
      <translation>angesehen, gut</translation>
    </message>
    <message>
      <source>looks anew</source>
      <translation>sieht neu durch</translation>
    </message>
    <message>
      <source>loose slugs</source>
      <translation>lose Abfallstücke</translation>
    </message>
    <message>
      <source>lost</source>
      <translation>verloren</translation>
    </message>
    <message>
      <source>lot</source>
      <translation>Charge</translation>
    </message>
    <message>
      <source>lot {lot}</source>
      <translation>Charge {lot}</translation>
    </message>
    <message>
      <source>lots may be off</source>
      <translation>Chargen weichen ab um</translation>
    </message>
    <message>
      <source>low</source>
      <translation>mindestens</translation>
    </message>
    <message>
      <source>made of batch {batch}</source>
      <translation>entstanden aus Los {batch}</translation>
    </message>
    <message>
      <source>mailer</source>
      <translation>Versandtasche</translation>
    </message>
    <message>
      <source>mailer, {long} × {wide} mm</source>
      <translation>Versandtasche, {long} × {wide} mm</translation>
    </message>
    <message>
      <source>mass</source>
      <translation>Masse</translation>
    </message>
    <message>
      <source>material</source>
      <translation>Material</translation>
    </message>
    <message>
      <source>may stay empty</source>
      <translation>darf leer bleiben</translation>
    </message>
    <message>
      <source>measure it</source>
      <translation>messen</translation>
    </message>
    <message>
      <source>measure it now</source>
      <translation>jetzt messen</translation>
    </message>
    <message>
      <source>measure it, enter {unit}</source>
      <translation>messen, {unit} eingeben</translation>
    </message>
    <message>
      <source>measure: {low} to {high} mm</source>
      <translation>messen: {low} bis {high} mm</translation>
    </message>
    <message>
      <source>measured again</source>
      <translation>nachgemessen</translation>
    </message>
    <message>
      <source>middle</source>
      <translation>Mitte</translation>
    </message>
    <message>
      <source>middle left</source>
      <translation>Mitte links</translation>
    </message>
    <message>
      <source>middle right</source>
      <translation>Mitte rechts</translation>
    </message>
    <message>
      <source>millimetres</source>
      <translation>Millimeter</translation>
    </message>
    <message>
      <source>minimum</source>
      <translation>Mindestbestand</translation>
    </message>
    <message>
      <source>minimum of labels</source>
      <translation>Mindestbestand an Etiketten</translation>
    </message>
    <message>
      <source>minimum of wrap</source>
      <translation>Mindestbestand an Folie</translation>
    </message>
    <message>
      <source>minimum {n}</source>
      <translation>Mindestbestand {n}</translation>
    </message>
    <message>
      <source>minutes</source>
      <translation>Minuten</translation>
    </message>
    <message>
      <source>missing</source>
      <translation>fehlt</translation>
    </message>
    <message>
      <source>mm</source>
      <translation>mm</translation>
    </message>
    <message>
      <source>more on a further page</source>
      <translation>mehr auf einer weiteren Seite</translation>
    </message>
    <message>
      <source>more reasons</source>
      <translation>weitere Gründe</translation>
    </message>
    <message>
      <source>most chip load</source>
      <translation>Spandicke höchstens</translation>
    </message>
    <message>
      <source>moved</source>
      <translation>bewegt</translation>
    </message>
    <message>
      <source>name</source>
      <translation>Name</translation>
    </message>
    <message>
      <source>new</source>
      <translation>neu</translation>
    </message>
    <message>
      <source>new bit {bit}</source>
      <translation>neuer Fräser {bit}</translation>
    </message>
    <message>
      <source>new: {id}, {what}</source>
      <translation>neu: {id}, {what}</translation>
    </message>
    <message>
      <source>no</source>
      <translation>nein</translation>
    </message>
    <message>
      <source>no approved file</source>
      <translation>keine freigegebene Datei</translation>
    </message>
    <message>
      <source>no batch on it</source>
      <translation>kein Los darauf</translation>
    </message>
    <message>
      <source>no due time: by need</source>
      <translation>kein Termin: nach Bedarf</translation>
    </message>
    <message>
      <source>no loose parts or offcuts on it</source>
      <translation>keine losen Teile oder Reste darauf</translation>
    </message>
    <message>
      <source>no order waits for it now</source>
      <translation>kein Auftrag wartet jetzt darauf</translation>
    </message>
    <message>
      <source>no other takes it: order it, or count again</source>
      <translation>keine andere passt: bestellen oder nachzählen</translation>
    </message>
    <message>
      <source>no part</source>
      <translation>kein Teil</translation>
    </message>
    <message>
      <source>no pieces</source>
      <translation>keine Stücke</translation>
    </message>
    <message>
      <source>no place</source>
      <translation>kein Platz</translation>
    </message>
    <message>
      <source>no price known</source>
      <translation>kein Preis bekannt</translation>
    </message>
    <message>
      <source>no rack place</source>
      <translation>kein Regalplatz</translation>
    </message>
    <message>
      <source>no reason given</source>
      <translation>ohne Grund</translation>
    </message>
    <message>
      <source>no revision is approved</source>
      <translation>keine Revision ist freigegeben</translation>
    </message>
    <message>
      <source>no router runs it</source>
      <translation>keine Fräse fräst es</translation>
    </message>
    <message>
      <source>no. {bits}</source>
      <translation>Nr. {bits}</translation>
    </message>
    <message>
      <source>no. {bit}</source>
      <translation>Nr. {bit}</translation>
    </message>
    <message>
      <source>nobody here did it</source>
      <translation>niemand hier war es</translation>
    </message>
    <message>
      <source>nobody near</source>
      <translation>niemand nahe</translation>
    </message>
    <message>
      <source>nobody said where</source>
      <translation>niemand sagte, wo</translation>
    </message>
    <message>
      <source>nominal</source>
      <translation>Nennmaß</translation>
    </message>
    <message>
      <source>none</source>
      <translation>keine</translation>
    </message>
    <message>
      <source>none of the other left</source>
      <translation>von der anderen keine mehr da</translation>
    </message>
    <message>
      <source>none on the rack</source>
      <translation>keine im Regal</translation>
    </message>
    <message>
      <source>none under way</source>
      <translation>keine unterwegs</translation>
    </message>
    <message>
      <source>none waits for this router</source>
      <translation>für diese Fräse wartet keins</translation>
    </message>
    <message>
      <source>none was ever received</source>
      <translation>nie eine eingegangen</translation>
    </message>
    <message>
      <source>none yet</source>
      <translation>noch keine</translation>
    </message>
    <message>
      <source>not begun</source>
      <translation>nicht begonnen</translation>
    </message>
    <message>
      <source>not counted</source>
      <translation>nicht gezählt</translation>
    </message>
    <message>
      <source>not delivered</source>
      <translation>nicht zugestellt</translation>
    </message>
    <message>
      <source>not known</source>
      <translation>nicht bekannt</translation>
    </message>
    <message>
      <source>not shared</source>
      <translation>nicht geteilt</translation>
    </message>
    <message>
      <source>not there</source>
      <translation>nicht da</translation>
    </message>
    <message>
      <source>not to be found</source>
      <translation>nicht zu finden</translation>
    </message>
    <message>
      <source>not wanted</source>
      <translation>nicht gewünscht</translation>
    </message>
    <message>
      <source>not yet: each backup is read again</source>
      <translation>noch nicht: jede Sicherung wird noch einmal gelesen</translation>
    </message>
    <message>
      <source>note</source>
      <translation>Notiz</translation>
    </message>
    <message>
      <source>nothing</source>
      <translation>nichts</translation>
    </message>
    <message>
      <source>nothing is owed</source>
      <translation>nichts wird geschuldet</translation>
    </message>
    <message>
      <source>nothing more</source>
      <translation>nichts weiter</translation>
    </message>
    <message>
      <source>nothing takes it in one</source>
      <translation>keine Tasche fasst alles</translation>
    </message>
    <message>
      <source>nothing takes it, not even in two: close it by parts</source>
      <translation>nichts nimmt es, auch nicht in zweien: schließ es in Teilen</translation>
    </message>
    <message>
      <source>nothing to bring</source>
      <translation>nichts mitzubringen</translation>
    </message>
    <message>
      <source>nothing waits for it</source>
      <translation>nichts wartet darauf</translation>
    </message>
    <message>
      <source>nothing yet</source>
      <translation>noch nichts</translation>
    </message>
    <message>
      <source>now</source>
      <translation>jetzt</translation>
    </message>
    <message>
      <source>number</source>
      <translation>Nummer</translation>
    </message>
    <message>
      <source>number {n} is beside the sheet</source>
      <translation>Nummer {n} ist neben der Platte</translation>
    </message>
    <message>
      <source>number {n} stands on a piece</source>
      <translation>Nummer {n} steht auf einem Teil</translation>
    </message>
    <message>
      <source>of {n} {n|part|parts}</source>
      <translation>von {n} {n|Teil|Teilen}</translation>
    </message>
    <message>
      <source>of {n} {n|sheet|sheets}</source>
      <translation>von {n} {n|Platte|Platten}</translation>
    </message>
    <message>
      <source>of {sheets}</source>
      <translation>von {sheets}</translation>
    </message>
    <message>
      <source>of {sheets}, run {run} of {runs}</source>
      <translation>von {sheets}, Durchgang {run} von {runs}</translation>
    </message>
    <message>
      <source>off the bed</source>
      <translation>vom Tisch</translation>
    </message>
    <message>
      <source>on a bit's card</source>
      <translation>auf der Karte eines Fräsers</translation>
    </message>
    <message>
      <source>on the bed of {router}</source>
      <translation>auf dem Tisch von {router}</translation>
    </message>
    <message>
      <source>on the handover sheet</source>
      <translation>auf dem Übergabeblatt</translation>
    </message>
    <message>
      <source>on the scale</source>
      <translation>auf der Waage</translation>
    </message>
    <message>
      <source>on the sheet</source>
      <translation>auf der Platte</translation>
    </message>
    <message>
      <source>one is 25.4 mm</source>
      <translation>einer ist 25,4 mm</translation>
    </message>
    <message>
      <source>one turn, {m} m</source>
      <translation>eine Lage, {m} m</translation>
    </message>
    <message>
      <source>one {product}</source>
      <translation>ein {product}</translation>
    </message>
    <message>
      <source>only assumed</source>
      <translation>nur angenommen</translation>
    </message>
    <message>
      <source>only {n} there</source>
      <translation>nur {n} da</translation>
    </message>
    <message>
      <source>open</source>
      <translation>offen</translation>
    </message>
    <message>
      <source>open pack of order {number}</source>
      <translation>offenes Paket von Auftrag {number}</translation>
    </message>
    <message>
      <source>open {file}</source>
      <translation>{file} öffnen</translation>
    </message>
    <message>
      <source>or a traveller for all its sheets here</source>
      <translation>oder eine Laufkarte für alle ihre Platten hier</translation>
    </message>
    <message>
      <source>or measure {size} now</source>
      <translation>oder jetzt {size} messen</translation>
    </message>
    <message>
      <source>or touch a batch that waits</source>
      <translation>oder ein wartendes Los berühren</translation>
    </message>
    <message>
      <source>or touch your number</source>
      <translation>oder deine Nummer berühren</translation>
    </message>
    <message>
      <source>order</source>
      <translation>Auftrag</translation>
    </message>
    <message>
      <source>order cannot wait</source>
      <translation>Auftrag kann nicht warten</translation>
    </message>
    <message>
      <source>order {order}</source>
      <translation>Auftrag {order}</translation>
    </message>
    <message>
      <source>order {order} wants it</source>
      <translation>Auftrag {order} braucht es</translation>
    </message>
    <message>
      <source>order {order} wants {part}, {at}</source>
      <translation>Auftrag {order} braucht {part}, {at}</translation>
    </message>
    <message>
      <source>orders that wait for parts</source>
      <translation>Aufträge, die auf Teile warten</translation>
    </message>
    <message>
      <source>orders, in the order of the rack</source>
      <translation>Aufträge, in der Folge des Regals</translation>
    </message>
    <message>
      <source>other</source>
      <translation>anderes</translation>
    </message>
    <message>
      <source>others run it too</source>
      <translation>andere fräsen es auch</translation>
    </message>
    <message>
      <source>over</source>
      <translation>durch</translation>
    </message>
    <message>
      <source>over 99 %</source>
      <translation>über 99 %</translation>
    </message>
    <message>
      <source>over-trimmed</source>
      <translation>zu viel verputzt</translation>
    </message>
    <message>
      <source>overrule</source>
      <translation>überstimmen</translation>
    </message>
    <message>
      <source>owed</source>
      <translation>steht noch aus</translation>
    </message>
    <message>
      <source>owed of order</source>
      <translation>geschuldet von Auftrag</translation>
    </message>
    <message>
      <source>owed of {order}</source>
      <translation>geschuldet von {order}</translation>
    </message>
    <message>
      <source>owed whole</source>
      <translation>ganz offen</translation>
    </message>
    <message>
      <source>pace</source>
      <translation>Zeitfaktor</translation>
    </message>
    <message>
      <source>pack</source>
      <translation>Paket</translation>
    </message>
    <message>
      <source>pack sheets</source>
      <translation>Platten im Paket</translation>
    </message>
    <message>
      <source>pack {number}</source>
      <translation>Paket {number}</translation>
    </message>
    <message>
      <source>pack {n} of {all}</source>
      <translation>Paket {n} von {all}</translation>
    </message>
    <message>
      <source>pack {n}, more follow</source>
      <translation>Paket {n}, mehr folgen</translation>
    </message>
    <message>
      <source>pack {pack} is on the shelf</source>
      <translation>Paket {pack} liegt im Vorrat</translation>
    </message>
    <message>
      <source>packed</source>
      <translation>gepackt</translation>
    </message>
    <message>
      <source>packed at station</source>
      <translation>gepackt an Station</translation>
    </message>
    <message>
      <source>packed by worker</source>
      <translation>gepackt von Mitarbeiter</translation>
    </message>
    <message>
      <source>packed {time}</source>
      <translation>gepackt {time}</translation>
    </message>
    <message>
      <source>packing</source>
      <translation>Packen</translation>
    </message>
    <message>
      <source>packing supplies</source>
      <translation>Packvorräte</translation>
    </message>
    <message>
      <source>packs ahead</source>
      <translation>Pakete auf Vorrat</translation>
    </message>
    <message>
      <source>packs for a cart</source>
      <translation>Pakete für einen Wagen</translation>
    </message>
    <message>
      <source>paper</source>
      <translation>Papier</translation>
    </message>
    <message>
      <source>part</source>
      <translation>Teil</translation>
    </message>
    <message>
      <source>part {part}</source>
      <translation>Teil {part}</translation>
    </message>
    <message>
      <source>parts</source>
      <translation>Teile</translation>
    </message>
    <message>
      <source>parts are fragile</source>
      <translation>Teile sind zerbrechlich</translation>
    </message>
    <message>
      <source>parts spoiled</source>
      <translation>Teile Ausschuss</translation>
    </message>
    <message>
      <source>parts to rework</source>
      <translation>Teile zur Nacharbeit</translation>
    </message>
    <message>
      <source>parts {parts}, loose {waste}, skeleton {rest}, kerf {kerf} m²</source>
      <translation>Teile {parts}, lose {waste}, Rest {rest}, Fuge {kerf} m²</translation>
    </message>
    <message>
      <source>passed {n} on</source>
      <translation>{n} weitergegeben</translation>
    </message>
    <message>
      <source>pick list of order</source>
      <translation>Entnahmeliste von Auftrag</translation>
    </message>
    <message>
      <source>pieces</source>
      <translation>Stück</translation>
    </message>
    <message>
      <source>pieces beyond need</source>
      <translation>Stück über Bedarf</translation>
    </message>
    <message>
      <source>pieces cut</source>
      <translation>Stück gefräst</translation>
    </message>
    <message>
      <source>pieces may be off</source>
      <translation>Stücke weichen ab um</translation>
    </message>
    <message>
      <source>pieces that may fly</source>
      <translation>Teile, die fliegen können</translation>
    </message>
    <message>
      <source>place</source>
      <translation>Platz</translation>
    </message>
    <message>
      <source>place {place}</source>
      <translation>Platz {place}</translation>
    </message>
    <message>
      <source>point</source>
      <translation>Komma</translation>
    </message>
    <message>
      <source>popped</source>
      <translation>ausgebrochen</translation>
    </message>
    <message>
      <source>popping parts</source>
      <translation>Teile lösen</translation>
    </message>
    <message>
      <source>popping, sheet {number}</source>
      <translation>Ausbrechen, Platte {number}</translation>
    </message>
    <message>
      <source>power or control</source>
      <translation>Strom oder Steuerung</translation>
    </message>
    <message>
      <source>prefix</source>
      <translation>Vorsatz</translation>
    </message>
    <message>
      <source>price</source>
      <translation>Preis</translation>
    </message>
    <message>
      <source>printed {time}</source>
      <translation>gedruckt {time}</translation>
    </message>
    <message>
      <source>product</source>
      <translation>Produkt</translation>
    </message>
    <message>
      <source>program</source>
      <translation>Programm</translation>
    </message>
    <message>
      <source>put back</source>
      <translation>zurückgelegt</translation>
    </message>
    <message>
      <source>put down here</source>
      <translation>hier weggelegt</translation>
    </message>
    <message>
      <source>put {n} on the rack</source>
      <translation>{n} ins Regal gelegt</translation>
    </message>
    <message>
      <source>quantity</source>
      <translation>Menge</translation>
    </message>
    <message>
      <source>question</source>
      <translation>Frage</translation>
    </message>
    <message>
      <source>rack</source>
      <translation>Regal</translation>
    </message>
    <message>
      <source>rack place</source>
      <translation>Regalplatz</translation>
    </message>
    <message>
      <source>rack {number}</source>
      <translation>Regal {number}</translation>
    </message>
    <message>
      <source>rack {place}</source>
      <translation>Regal {place}</translation>
    </message>
    <message>
      <source>rapid</source>
      <translation>Eilgang</translation>
    </message>
    <message>
      <source>re-home it</source>
      <translation>neu referenzieren</translation>
    </message>
    <message>
      <source>read all</source>
      <translation>alles lesen</translation>
    </message>
    <message>
      <source>reason</source>
      <translation>Grund</translation>
    </message>
    <message>
      <source>reason: {use}</source>
      <translation>Grund: {use}</translation>
    </message>
    <message>
      <source>received</source>
      <translation>erhalten</translation>
    </message>
    <message>
      <source>recount limit</source>
      <translation>Grenze der Nachzählung</translation>
    </message>
    <message>
      <source>rehome</source>
      <translation>neu referenzieren</translation>
    </message>
    <message>
      <source>repack</source>
      <translation>Paket wieder öffnen</translation>
    </message>
    <message>
      <source>retired</source>
      <translation>außer Gebrauch</translation>
    </message>
    <message>
      <source>retired · {words}</source>
      <translation>außer Gebrauch · {words}</translation>
    </message>
    <message>
      <source>returned</source>
      <translation>zurückgekommen</translation>
    </message>
    <message>
      <source>revision</source>
      <translation>Revision</translation>
    </message>
    <message>
      <source>revision {has}, approved is {is_}</source>
      <translation>Revision {has}, freigegeben ist {is_}</translation>
    </message>
    <message>
      <source>revision {letter} is approved</source>
      <translation>Revision {letter} ist freigegeben</translation>
    </message>
    <message>
      <source>revision {letter} is not approved: {left} {left|sheet|sheets} held</source>
      <translation>Revision {letter} ist nicht freigegeben: {left} {left|Platte|Platten} gesperrt</translation>
    </message>
    <message>
      <source>revision {letter} of cut file {file}</source>
      <translation>Revision {letter} der Fräsdatei {file}</translation>
    </message>
    <message>
      <source>rework</source>
      <translation>Nacharbeit</translation>
    </message>
    <message>
      <source>right edge at {at} mm</source>
      <translation>rechte Kante bei {at} mm</translation>
    </message>
    <message>
      <source>right from {low} to {high} mm</source>
      <translation>richtig von {low} bis {high} mm</translation>
    </message>
    <message>
      <source>room, pieces</source>
      <translation>Platz, Stück</translation>
    </message>
    <message>
      <source>rough edge</source>
      <translation>raue Kante</translation>
    </message>
    <message>
      <source>router</source>
      <translation>Fräse</translation>
    </message>
    <message>
      <source>router fault</source>
      <translation>Störung der Fräse</translation>
    </message>
    <message>
      <source>router minutes</source>
      <translation>Fräsminuten</translation>
    </message>
    <message>
      <source>router, ends</source>
      <translation>Fräse, fertig</translation>
    </message>
    <message>
      <source>router, {bed}</source>
      <translation>Fräse, {bed}</translation>
    </message>
    <message>
      <source>routers</source>
      <translation>Fräsen</translation>
    </message>
    <message>
      <source>running on</source>
      <translation>Weiterlaufen</translation>
    </message>
    <message>
      <source>runs</source>
      <translation>Durchgänge</translation>
    </message>
    <message>
      <source>said</source>
      <translation>gesagt</translation>
    </message>
    <message>
      <source>said here</source>
      <translation>hier gesagt</translation>
    </message>
    <message>
      <source>scale may be off</source>
      <translation>Waage darf abweichen</translation>
    </message>
    <message>
      <source>scale may miss one of</source>
      <translation>Waage übersieht evtl. eins</translation>
    </message>
    <message>
      <source>scale misses none of</source>
      <translation>Waage übersieht keins</translation>
    </message>
    <message>
      <source>scan each part at its place: the screen counts</source>
      <translation>jedes Teil an seinem Platz scannen: der Bildschirm zählt</translation>
    </message>
    <message>
      <source>scan its card or touch its row; a number first for several</source>
      <translation>Karte scannen oder Zeile berühren; für mehrere erst die Zahl</translation>
    </message>
    <message>
      <source>scan its card or touch its row; a number first for some of it</source>
      <translation>Karte scannen oder Zeile berühren; für einige erst eine Zahl</translation>
    </message>
    <message>
      <source>scan its card, or touch it</source>
      <translation>Karte scannen oder berühren</translation>
    </message>
    <message>
      <source>scan its label, or touch it</source>
      <translation>sein Etikett scannen, oder es berühren</translation>
    </message>
    <message>
      <source>scan its label, or touch it in the list at the right</source>
      <translation>Etikett scannen oder rechts in der Liste berühren</translation>
    </message>
    <message>
      <source>scan or touch the pack that comes off</source>
      <translation>das Paket scannen oder berühren, das herunterkommt</translation>
    </message>
    <message>
      <source>scan the card under the master, or touch the row</source>
      <translation>Karte unter dem Muster scannen oder Zeile berühren</translation>
    </message>
    <message>
      <source>scan the first order; the next order’s scan closes its pack</source>
      <translation>ersten Auftrag scannen; der Scan des nächsten schließt sein Paket</translation>
    </message>
    <message>
      <source>scan the mailer’s card or touch it; then the number</source>
      <translation>Karte der Versandtasche scannen oder berühren; dann die Zahl</translation>
    </message>
    <message>
      <source>scan the order's card, or touch its pack</source>
      <translation>Karte des Auftrags scannen oder sein Paket berühren</translation>
    </message>
    <message>
      <source>scan the pack that goes on</source>
      <translation>das Paket scannen, das daraufkommt</translation>
    </message>
    <message>
      <source>scan the pack’s label or a card; touch a row; or type its number</source>
      <translation>Etikett des Pakets oder eine Karte scannen; eine Zeile berühren; oder die Nummer eintippen</translation>
    </message>
    <message>
      <source>second</source>
      <translation>zweiter Arbeitsgang</translation>
    </message>
    <message>
      <source>second folder of backups</source>
      <translation>zweiter Ordner der Sicherungen</translation>
    </message>
    <message>
      <source>see above</source>
      <translation>siehe oben</translation>
    </message>
    <message>
      <source>send it</source>
      <translation>abschicken</translation>
    </message>
    <message>
      <source>send it back</source>
      <translation>zurückschicken</translation>
    </message>
    <message>
      <source>send it short</source>
      <translation>unvollständig senden</translation>
    </message>
    <message>
      <source>send others</source>
      <translation>Ersatz senden</translation>
    </message>
    <message>
      <source>service level</source>
      <translation>Lieferbereitschaft</translation>
    </message>
    <message>
      <source>set again for the new bit</source>
      <translation>neu setzen für den neuen Fräser</translation>
    </message>
    <message>
      <source>set it: {why}</source>
      <translation>setzen: {why}</translation>
    </message>
    <message>
      <source>set up</source>
      <translation>eingerichtet</translation>
    </message>
    <message>
      <source>set {n} of {all}</source>
      <translation>Satz {n} von {all}</translation>
    </message>
    <message>
      <source>settle it this way</source>
      <translation>so klären</translation>
    </message>
    <message>
      <source>sharing has stopped</source>
      <translation>das Teilen ruht</translation>
    </message>
    <message>
      <source>sheet</source>
      <translation>Platte</translation>
    </message>
    <message>
      <source>sheet held</source>
      <translation>Platte gehalten</translation>
    </message>
    <message>
      <source>sheet moved</source>
      <translation>Platte verrutscht</translation>
    </message>
    <message>
      <source>sheet spoiled</source>
      <translation>Platte Ausschuss</translation>
    </message>
    <message>
      <source>sheet store</source>
      <translation>Plattenlager</translation>
    </message>
    <message>
      <source>sheet {n} of batch {batch}</source>
      <translation>Platte {n} von Los {batch}</translation>
    </message>
    <message>
      <source>sheet {n} of batch {batch}, {left} min left</source>
      <translation>Platte {n} von Los {batch}, noch {left} min</translation>
    </message>
    <message>
      <source>sheet {n} of {of}</source>
      <translation>Platte {n} von {of}</translation>
    </message>
    <message>
      <source>sheet {n} with its slip, from beside the routers</source>
      <translation>Platte {n} mit ihrem Abschnitt, von neben den Fräsen</translation>
    </message>
    <message>
      <source>sheet {n}, {pieces}</source>
      <translation>Platte {n}, {pieces}</translation>
    </message>
    <message>
      <source>sheet {sheet}</source>
      <translation>Platte {sheet}</translation>
    </message>
    <message>
      <source>sheets</source>
      <translation>Platten</translation>
    </message>
    <message>
      <source>sheets of this lot</source>
      <translation>Platten dieser Charge</translation>
    </message>
    <message>
      <source>shelf place</source>
      <translation>Vorratsfach</translation>
    </message>
    <message>
      <source>shelf {place}: {n} of {mark} there</source>
      <translation>Vorratsfach {place}: {n} von {mark} dort</translation>
    </message>
    <message>
      <source>shipped</source>
      <translation>verschickt</translation>
    </message>
    <message>
      <source>short</source>
      <translation>fehlend</translation>
    </message>
    <message>
      <source>short {n} × {part}</source>
      <translation>{n} × {part} fehlen</translation>
    </message>
    <message>
      <source>should weigh, no wrap</source>
      <translation>Sollgewicht ohne Polster</translation>
    </message>
    <message>
      <source>since</source>
      <translation>seit</translation>
    </message>
    <message>
      <source>since then</source>
      <translation>seitdem</translation>
    </message>
    <message>
      <source>since {at}</source>
      <translation>seit {at}</translation>
    </message>
    <message>
      <source>since {day}</source>
      <translation>seit {day}</translation>
    </message>
    <message>
      <source>sizes</source>
      <translation>Maße</translation>
    </message>
    <message>
      <source>sleeve</source>
      <translation>Hülle</translation>
    </message>
    <message>
      <source>small</source>
      <translation>klein</translation>
    </message>
    <message>
      <source>small piece</source>
      <translation>kleines Teil</translation>
    </message>
    <message>
      <source>small pieces</source>
      <translation>kleine Teile</translation>
    </message>
    <message>
      <source>sold in packs of</source>
      <translation>in Packungen zu</translation>
    </message>
    <message>
      <source>something came back</source>
      <translation>etwas kam zurück</translation>
    </message>
    <message>
      <source>sort at the bench</source>
      <translation>am Packtisch sortieren</translation>
    </message>
    <message>
      <source>spare in a mailer</source>
      <translation>Luft in der Versandtasche</translation>
    </message>
    <message>
      <source>split off from batch {parents}</source>
      <translation>abgeteilt von Los {parents}</translation>
    </message>
    <message>
      <source>split {n} off</source>
      <translation>{n} abgetrennt</translation>
    </message>
    <message>
      <source>spoilboard</source>
      <translation>Opferplatte</translation>
    </message>
    <message>
      <source>spoilboard bears, sheets</source>
      <translation>Opferplatte trägt, Platten</translation>
    </message>
    <message>
      <source>spoilboard of router {number}</source>
      <translation>Opferplatte von Fräse {number}</translation>
    </message>
    <message>
      <source>spoiled</source>
      <translation>Ausschuss</translation>
    </message>
    <message>
      <source>spoiled ({number})</source>
      <translation>Ausschuss ({number})</translation>
    </message>
    <message>
      <source>stack</source>
      <translation>Stapel</translation>
    </message>
    <message>
      <source>starts {starts} · off the bed {ends}</source>
      <translation>beginnt {starts} · vom Tisch {ends}</translation>
    </message>
    <message>
      <source>state</source>
      <translation>Zustand</translation>
    </message>
    <message>
      <source>station</source>
      <translation>Station</translation>
    </message>
    <message>
      <source>station {id}</source>
      <translation>Station {id}</translation>
    </message>
    <message>
      <source>station {station} packs it</source>
      <translation>Station {station} packt ihn</translation>
    </message>
    <message>
      <source>stays</source>
      <translation>bleibt</translation>
    </message>
    <message>
      <source>still to fetch</source>
      <translation>noch zu holen</translation>
    </message>
    <message>
      <source>stop</source>
      <translation>Halt</translation>
    </message>
    <message>
      <source>stopped</source>
      <translation>steht</translation>
    </message>
    <message>
      <source>stopped since {at}</source>
      <translation>steht seit {at}</translation>
    </message>
    <message>
      <source>stopped since {at}: {why}</source>
      <translation>steht seit {at}: {why}</translation>
    </message>
    <message>
      <source>supervisor</source>
      <translation>Aufsicht</translation>
    </message>
    <message>
      <source>supervisor {by}: {why}</source>
      <translation>Aufsicht {by}: {why}</translation>
    </message>
    <message>
      <source>supplier agreed</source>
      <translation>Lieferant stimmt zu</translation>
    </message>
    <message>
      <source>surfacing the board</source>
      <translation>Opferplatte planen</translation>
    </message>
    <message>
      <source>tabs</source>
      <translation>Stege</translation>
    </message>
    <message>
      <source>take from</source>
      <translation>nehmen von</translation>
    </message>
    <message>
      <source>take it out</source>
      <translation>herausnehmen</translation>
    </message>
    <message>
      <source>take the last one out</source>
      <translation>letztes Zeichen löschen</translation>
    </message>
    <message>
      <source>taken as</source>
      <translation>genommen als</translation>
    </message>
    <message>
      <source>taken back</source>
      <translation>zurückgenommen</translation>
    </message>
    <message>
      <source>takes over: worker, time</source>
      <translation>übernimmt: Nr., Uhrzeit</translation>
    </message>
    <message>
      <source>taking a part out</source>
      <translation>ein Teil herausnehmen</translation>
    </message>
    <message>
      <source>tears too easily</source>
      <translation>reißt zu leicht</translation>
    </message>
    <message>
      <source>that is it</source>
      <translation>das ist es</translation>
    </message>
    <message>
      <source>the bit comes too near number {n}</source>
      <translation>der Fräser kommt Nummer {n} zu nah</translation>
    </message>
    <message>
      <source>the cart</source>
      <translation>der Wagen</translation>
    </message>
    <message>
      <source>the first by due time whose parts are all there; or scan or touch one</source>
      <translation>der erste nach Termin, dessen Teile alle da sind; oder einen scannen oder berühren</translation>
    </message>
    <message>
      <source>the labels</source>
      <translation>die Etiketten</translation>
    </message>
    <message>
      <source>the laser</source>
      <translation>der Laser</translation>
    </message>
    <message>
      <source>the one in the spindle</source>
      <translation>der in der Spindel</translation>
    </message>
    <message>
      <source>the router stopped</source>
      <translation>die Fräse stand</translation>
    </message>
    <message>
      <source>the router table</source>
      <translation>der Frästisch</translation>
    </message>
    <message>
      <source>the same</source>
      <translation>dieselbe</translation>
    </message>
    <message>
      <source>the state before of {key} is another</source>
      <translation>der Stand davor von {key} ist ein anderer</translation>
    </message>
    <message>
      <source>the tool changer</source>
      <translation>der Werkzeugwechsler</translation>
    </message>
    <message>
      <source>the traveller of batch {batch}</source>
      <translation>die Laufkarte von Los {batch}</translation>
    </message>
    <message>
      <source>then its card: close the pack, or scan the product’s card again</source>
      <translation>dann die Karte: Paket schließen oder die Produktkarte noch einmal scannen</translation>
    </message>
    <message>
      <source>then {router}, {at}</source>
      <translation>dann {router}, {at}</translation>
    </message>
    <message>
      <source>thick</source>
      <translation>dick</translation>
    </message>
    <message>
      <source>thickest</source>
      <translation>Dicke höchstens</translation>
    </message>
    <message>
      <source>thickness</source>
      <translation>Dicke</translation>
    </message>
    <message>
      <source>this bed takes none at number {n}</source>
      <translation>dieser Tisch nimmt keinen bei Nummer {n}</translation>
    </message>
    <message>
      <source>this is pack {n}</source>
      <translation>dies ist Paket {n}</translation>
    </message>
    <message>
      <source>this once</source>
      <translation>nur dieses Mal</translation>
    </message>
    <message>
      <source>this router was never set</source>
      <translation>Nullpunkt dieser Fräse war nie gesetzt</translation>
    </message>
    <message>
      <source>time to load</source>
      <translation>Zeit zum Beladen</translation>
    </message>
    <message>
      <source>to be made good, try {n} of 2, from batch {parents}</source>
      <translation>zur Nacharbeit, Versuch {n} von 2, aus Los {parents}</translation>
    </message>
    <message>
      <source>to be made good, try {n} of {most} · {here} {here|part|parts}</source>
      <translation>nachzubessern, Versuch {n} von {most} · {here} {here|Teil|Teile}</translation>
    </message>
    <message>
      <source>to be mended</source>
      <translation>in Ordnung zu bringen</translation>
    </message>
    <message>
      <source>to be said</source>
      <translation>noch zu sagen</translation>
    </message>
    <message>
      <source>to rework</source>
      <translation>zur Nacharbeit</translation>
    </message>
    <message>
      <source>to rework, {reason}</source>
      <translation>zur Nacharbeit, {reason}</translation>
    </message>
    <message>
      <source>to the left</source>
      <translation>nach links</translation>
    </message>
    <message>
      <source>to the right</source>
      <translation>nach rechts</translation>
    </message>
    <message>
      <source>today and tomorrow</source>
      <translation>heute und morgen</translation>
    </message>
    <message>
      <source>today {at}</source>
      <translation>heute {at}</translation>
    </message>
    <message>
      <source>told</source>
      <translation>gemeldet</translation>
    </message>
    <message>
      <source>told the customer</source>
      <translation>dem Kunden gesagt</translation>
    </message>
    <message>
      <source>tomorrow {at}</source>
      <translation>morgen {at}</translation>
    </message>
    <message>
      <source>too few sheets</source>
      <translation>zu wenig Platten</translation>
    </message>
    <message>
      <source>too large for one</source>
      <translation>zu groß für eins</translation>
    </message>
    <message>
      <source>too tight</source>
      <translation>zu eng</translation>
    </message>
    <message>
      <source>top edge at {at} mm</source>
      <translation>Oberkante bei {at} mm</translation>
    </message>
    <message>
      <source>top left</source>
      <translation>oben links</translation>
    </message>
    <message>
      <source>top middle</source>
      <translation>oben Mitte</translation>
    </message>
    <message>
      <source>top right</source>
      <translation>oben rechts</translation>
    </message>
    <message>
      <source>torn at a tab</source>
      <translation>am Steg ausgerissen</translation>
    </message>
    <message>
      <source>touch “Put back”, scan {parts}; then take others</source>
      <translation>„Zurücklegen“ berühren, {parts} scannen; dann andere nehmen</translation>
    </message>
    <message>
      <source>traveller</source>
      <translation>Laufkarte</translation>
    </message>
    <message>
      <source>trimmed</source>
      <translation>verputzt</translation>
    </message>
    <message>
      <source>trimming</source>
      <translation>Verputzen</translation>
    </message>
    <message>
      <source>two people</source>
      <translation>zu zweit ab</translation>
    </message>
    <message>
      <source>typing</source>
      <translation>Eingabe</translation>
    </message>
    <message>
      <source>uncut</source>
      <translation>nicht durchgefräst</translation>
    </message>
    <message>
      <source>under its master, {part}: {n} there now, minimum {mark}</source>
      <translation>unter dem Muster, {part}: jetzt {n}, Mindestbestand {mark}</translation>
    </message>
    <message>
      <source>units</source>
      <translation>Einheit</translation>
    </message>
    <message>
      <source>up to</source>
      <translation>bis</translation>
    </message>
    <message>
      <source>use</source>
      <translation>Verwendung</translation>
    </message>
    <message>
      <source>used a day</source>
      <translation>am Tag gebraucht</translation>
    </message>
    <message>
      <source>used up</source>
      <translation>verbraucht</translation>
    </message>
    <message>
      <source>usual at</source>
      <translation>üblich bei</translation>
    </message>
    <message>
      <source>usual bit</source>
      <translation>üblicher Fräser</translation>
    </message>
    <message>
      <source>usual loss</source>
      <translation>üblicher Verlust</translation>
    </message>
    <message>
      <source>usually {at}</source>
      <translation>sonst um {at}</translation>
    </message>
    <message>
      <source>vacuum</source>
      <translation>Vakuumbett</translation>
    </message>
    <message>
      <source>vacuum bed</source>
      <translation>Vakuumtisch</translation>
    </message>
    <message>
      <source>vacuum lost</source>
      <translation>Vakuum verloren</translation>
    </message>
    <message>
      <source>vacuum on, gauge steady</source>
      <translation>Vakuum an, Anzeige ruhig</translation>
    </message>
    <message>
      <source>value</source>
      <translation>Wert</translation>
    </message>
    <message>
      <source>volume of a weight</source>
      <translation>Volumen je Gewicht</translation>
    </message>
    <message>
      <source>wait for it</source>
      <translation>darauf warten</translation>
    </message>
    <message>
      <source>waiting</source>
      <translation>wartet</translation>
    </message>
    <message>
      <source>waiting for material</source>
      <translation>wartet auf Material</translation>
    </message>
    <message>
      <source>waits</source>
      <translation>wartet auf</translation>
    </message>
    <message>
      <source>waits for a cart since {at}</source>
      <translation>wartet seit {at} auf einen Wagen</translation>
    </message>
    <message>
      <source>waits for a part</source>
      <translation>wartet auf ein Teil</translation>
    </message>
    <message>
      <source>waits for you</source>
      <translation>wartet auf dich</translation>
    </message>
    <message>
      <source>waits for {part}</source>
      <translation>wartet auf {part}</translation>
    </message>
    <message>
      <source>wants {name}: not known</source>
      <translation>will {name}: unbekannt</translation>
    </message>
    <message>
      <source>was opened again</source>
      <translation>wurde wieder geöffnet</translation>
    </message>
    <message>
      <source>wear</source>
      <translation>Abnutzung</translation>
    </message>
    <message>
      <source>weighed may be off</source>
      <translation>Gewogenes darf abweichen</translation>
    </message>
    <message>
      <source>weight</source>
      <translation>Gewicht</translation>
    </message>
    <message>
      <source>what</source>
      <translation>was</translation>
    </message>
    <message>
      <source>when</source>
      <translation>wann</translation>
    </message>
    <message>
      <source>where a sheet is held</source>
      <translation>wo eine Platte gehalten wird</translation>
    </message>
    <message>
      <source>while it cuts</source>
      <translation>während sie fräst</translation>
    </message>
    <message>
      <source>whole</source>
      <translation>heil</translation>
    </message>
    <message>
      <source>why</source>
      <translation>warum</translation>
    </message>
    <message>
      <source>why cut</source>
      <translation>wofür</translation>
    </message>
    <message>
      <source>widest</source>
      <translation>Breite höchstens</translation>
    </message>
    <message>
      <source>width</source>
      <translation>Breite</translation>
    </message>
    <message>
      <source>will not last a sheet</source>
      <translation>reicht keine Platte mehr</translation>
    </message>
    <message>
      <source>with all queued</source>
      <translation>mit Wartenden</translation>
    </message>
    <message>
      <source>with its backup, {at}</source>
      <translation>mit seiner Sicherung, {at}</translation>
    </message>
    <message>
      <source>work</source>
      <translation>Arbeit</translation>
    </message>
    <message>
      <source>worked out may be off</source>
      <translation>Gerechnetes darf abweichen</translation>
    </message>
    <message>
      <source>worker</source>
      <translation>Mitarbeiter</translation>
    </message>
    <message>
      <source>worker {by} at station {station}, {at}</source>
      <translation>Mitarbeiter {by} an Station {station}, {at}</translation>
    </message>
    <message>
      <source>worker {by} {did} at {at}</source>
      <translation>Mitarbeiter {by} um {at}: {did}</translation>
    </message>
    <message>
      <source>worker {id}</source>
      <translation>Mitarbeiter {id}</translation>
    </message>
    <message>
      <source>worker, time</source>
      <translation>Nr., Uhrzeit</translation>
    </message>
    <message>
      <source>worn</source>
      <translation>abgenutzt</translation>
    </message>
    <message>
      <source>wrap</source>
      <translation>Polster</translation>
    </message>
    <message>
      <source>wrap, {unit}</source>
      <translation>Folie, {unit}</translation>
    </message>
    <message>
      <source>wrong</source>
      <translation>falsch</translation>
    </message>
    <message>
      <source>wrong file or sheet</source>
      <translation>falsche Datei oder Platte</translation>
    </message>
    <message>
      <source>wrong label</source>
      <translation>falsches Etikett</translation>
    </message>
    <message>
      <source>wrong part in it</source>
      <translation>falsches Teil darin</translation>
    </message>
    <message>
      <source>wrong part sent</source>
      <translation>falsches Teil geschickt</translation>
    </message>
    <message>
      <source>wrong size</source>
      <translation>falsches Maß</translation>
    </message>
    <message>
      <source>x</source>
      <translation>x</translation>
    </message>
    <message>
      <source>y</source>
      <translation>y</translation>
    </message>
    <message>
      <source>yes</source>
      <translation>ja</translation>
    </message>
    <message>
      <source>zero is due</source>
      <translation>Nullpunkt fällig</translation>
    </message>
    <message>
      <source>zero was set anew</source>
      <translation>Nullpunkt neu gesetzt</translation>
    </message>
    <message>
      <source>zone</source>
      <translation>Bereich</translation>
    </message>
    <message>
      <source>{all} come off; how many are lost can't be told yet.</source>
      <translation>{all} Stück; wie viele verloren gehen, ist noch nicht zu sagen.</translation>
    </message>
    <message>
      <source>{at}</source>
      <translation>{at}</translation>
    </message>
    <message>
      <source>{at} behind {n} {n|batch|batches}</source>
      <translation>{at} nach {n} {n|Los|Losen}</translation>
    </message>
    <message>
      <source>{at} of {whole} · {n}×</source>
      <translation>{at} von {whole} · {n}×</translation>
    </message>
    <message>
      <source>{a} closed {a|cut|cuts}, {b} {b|part|parts}</source>
      <translation>{a} {a|geschlossener Schnitt|geschlossene Schnitte}, {b} {b|Teil|Teile}</translation>
    </message>
    <message>
      <source>{a} to {b} mm deep</source>
      <translation>{a} bis {b} mm tief</translation>
    </message>
    <message>
      <source>{a} × {b}</source>
      <translation>{a} × {b}</translation>
    </message>
    <message>
      <source>{a} × {b} mm as drawn</source>
      <translation>{a} × {b} mm wie gezeichnet</translation>
    </message>
    <message>
      <source>{a} × {b} mm, closes over {c} mm</source>
      <translation>{a} × {b} mm, schließt über {c} mm</translation>
    </message>
    <message>
      <source>{bag} All parts are in: close the pack.</source>
      <translation>{bag} Alle Teile sind drin: Paket schließen.</translation>
    </message>
    <message>
      <source>{bag} Next: {n} {part} from rack {place}.</source>
      <translation>{bag} Als Nächstes: {n} {part} aus Regal {place}.</translation>
    </message>
    <message>
      <source>{bag} Then set {n}.</source>
      <translation>{bag} Dann Satz {n}.</translation>
    </message>
    <message>
      <source>{batches}: keep them apart.</source>
      <translation>{batches}: getrennt halten.</translation>
    </message>
    <message>
      <source>{batches}: leave them there. {then}</source>
      <translation>{batches}: dort lassen. {then}</translation>
    </message>
    <message>
      <source>{batches}: put {n} of it back, take others.</source>
      <translation>{batches}: {n} davon zurücklegen, andere nehmen.</translation>
    </message>
    <message>
      <source>{batches}: put {pieces} back, take others.</source>
      <translation>{batches}: {pieces} zurücklegen, andere nehmen.</translation>
    </message>
    <message>
      <source>{batches}: {n} of it in this pack</source>
      <translation>{batches}: {n} davon in diesem Paket</translation>
    </message>
    <message>
      <source>{batches}: {n} {part} in {place} {n|stays|stay} there</source>
      <translation>{batches}: {n} {part} in {place} {n|bleibt|bleiben} dort</translation>
    </message>
    <message>
      <source>{batch}</source>
      <translation>{batch}</translation>
    </message>
    <message>
      <source>{batch} on router {router} should be cut sooner</source>
      <translation>{batch} auf Fräse {router} sollte früher dran sein</translation>
    </message>
    <message>
      <source>{batch}, sheet {n}</source>
      <translation>{batch}, Platte {n}</translation>
    </message>
    <message>
      <source>{batch}, sheet {sheet}: should be off</source>
      <translation>{batch}, Platte {sheet}: sollte vom Tisch sein</translation>
    </message>
    <message>
      <source>{batch}, {words}</source>
      <translation>{batch}, {words}</translation>
    </message>
    <message>
      <source>{before} → {after}</source>
      <translation>{before} → {after}</translation>
    </message>
    <message>
      <source>{bit}, {n} % of its life</source>
      <translation>{bit}, {n} % seiner Standzeit</translation>
    </message>
    <message>
      <source>{both} exclude each other; the last one is used.</source>
      <translation>{both} schließen einander aus; das letzte gilt.</translation>
    </message>
    <message>
      <source>{cart} in hand</source>
      <translation>{cart} in Arbeit</translation>
    </message>
    <message>
      <source>{cart} is at the door</source>
      <translation>{cart} ist an der Tür</translation>
    </message>
    <message>
      <source>{cart} is back from the door</source>
      <translation>{cart} ist von der Tür zurück</translation>
    </message>
    <message>
      <source>{cart} is not at the door yet</source>
      <translation>{cart} ist noch nicht an der Tür</translation>
    </message>
    <message>
      <source>{cart} left, packs on it: {n}</source>
      <translation>{cart} ist abgefahren, Pakete darauf: {n}</translation>
    </message>
    <message>
      <source>{cart} should have gone at {at}</source>
      <translation>{cart} hätte um {at} abfahren sollen</translation>
    </message>
    <message>
      <source>{cart}, more packs</source>
      <translation>{cart}, weitere Pakete</translation>
    </message>
    <message>
      <source>{cart}: {n} {n|pack|packs} on it, {state}</source>
      <translation>{cart}: {n} {n|Paket|Pakete} darauf, {state}</translation>
    </message>
    <message>
      <source>{counted} so far. Go on from there.</source>
      <translation>{counted} bis jetzt. Von da weiter.</translation>
    </message>
    <message>
      <source>{counted}. Go on from there.</source>
      <translation>{counted}. Mach dort weiter.</translation>
    </message>
    <message>
      <source>{counted}: counted so far by worker {by}</source>
      <translation>{counted}: bis jetzt gezählt von Nr. {by}</translation>
    </message>
    <message>
      <source>{counted}: counted so far by workers {workers}</source>
      <translation>{counted}: bis jetzt gezählt von Nr. {workers}</translation>
    </message>
    <message>
      <source>{count}</source>
      <translation>{count}</translation>
    </message>
    <message>
      <source>{count} not shared</source>
      <translation>{count} nicht geteilt</translation>
    </message>
    <message>
      <source>{count} not shared since {since}</source>
      <translation>{count} nicht geteilt seit {since}</translation>
    </message>
    <message>
      <source>{count} of {most} {count|is|are} whole</source>
      <translation>{count} von {most} {count|ist|sind} heil</translation>
    </message>
    <message>
      <source>{count} {count|arc ends|arcs end} up to {off} mm off the circle, as figures with few decimals do. Some routers refuse that: write the file with more decimals.</source>
      <translation>{count} {count|Bogen endet|Bögen enden} bis zu {off} mm neben dem Kreis, wie es bei Zahlen mit wenigen Nachkommastellen vorkommt. Manche Fräsen verweigern das: Die Datei mit mehr Nachkommastellen schreiben.</translation>
    </message>
    <message>
      <source>{count} {count|batch|batches} of the old revision {count|is|are} held.</source>
      <translation>{count} {count|Los|Lose} der alten Revision {count|ist|sind} gesperrt.</translation>
    </message>
    <message>
      <source>{count} {count|hold-down|hold-downs}</source>
      <translation>{count} Niederhalter</translation>
    </message>
    <message>
      <source>{count} {count|piece|pieces}</source>
      <translation>{count} {count|Stück|Stücke}</translation>
    </message>
    <message>
      <source>{count} {count|problem|problems}: nothing was set.</source>
      <translation>{count} {count|Fehler|Fehler}: nichts wurde gesetzt.</translation>
    </message>
    <message>
      <source>{count} {count|sheet was|sheets were} cut.</source>
      <translation>{count} {count|Platte wurde|Platten wurden} gefräst.</translation>
    </message>
    <message>
      <source>{count} {count|sheet|sheets}</source>
      <translation>{count} {count|Platte|Platten}</translation>
    </message>
    <message>
      <source>{count} {count|waits|wait}</source>
      <translation>{count} {count|wartet|warten}</translation>
    </message>
    <message>
      <source>{count} {part} go on</source>
      <translation>{count} {part} gehen weiter</translation>
    </message>
    <message>
      <source>{count} {part} there by the book</source>
      <translation>{count} {part} da laut Buch</translation>
    </message>
    <message>
      <source>{count} {part} {count|goes|go} on now</source>
      <translation>{count} {part} {count|geht|gehen} jetzt weiter</translation>
    </message>
    <message>
      <source>{cut} less {loss} for loss: enough in {sure} of 100 cases.</source>
      <translation>{cut} weniger {loss} Verlust: genug in {sure} von 100 Fällen.</translation>
    </message>
    <message>
      <source>{cut} less {loss} for loss: enough with {sure} % certainty.</source>
      <translation>{cut} weniger {loss} Verlust: genug mit {sure} % Sicherheit.</translation>
    </message>
    <message>
      <source>{cut} less {loss} for loss: for the first {few} of {all} {all|order|orders}.</source>
      <translation>{cut} weniger {loss} Verlust: für die ersten {few} von {all} {all|Auftrag|Aufträgen}.</translation>
    </message>
    <message>
      <source>{cut} less {loss} for loss: {more} more {more|sheet|sheets} of it {more|follows|follow}.</source>
      <translation>{cut} weniger {loss} Verlust: {more} weitere {more|Platte|Platten} davon {more|folgt|folgen}.</translation>
    </message>
    <message>
      <source>{cut} of {life} m cut</source>
      <translation>{cut} von {life} m gefräst</translation>
    </message>
    <message>
      <source>{days} days of {part}: {n} there, {wanted} wanted</source>
      <translation>{days} Tage {part}: {n} da, {wanted} verlangt</translation>
    </message>
    <message>
      <source>{day}</source>
      <translation>{day}</translation>
    </message>
    <message>
      <source>{day} {at}</source>
      <translation>{day} {at}</translation>
    </message>
    <message>
      <source>{day} {month}</source>
      <translation>{day}.{month}</translation>
    </message>
    <message>
      <source>{day} {month} {year}</source>
      <translation>{day}.{month}{year}</translation>
    </message>
    <message>
      <source>{do} Only looked at? Undo.</source>
      <translation>{do} Nur angesehen? Rückgängig.</translation>
    </message>
    <message>
      <source>{do} Then order {order}: {then}</source>
      <translation>{do} Dann Auftrag {order}: {then}</translation>
    </message>
    <message>
      <source>{due} is no time</source>
      <translation>{due} ist keine Zeit</translation>
    </message>
    <message>
      <source>{due}, {order}</source>
      <translation>{due}, {order}</translation>
    </message>
    <message>
      <source>{far}, at station {station}</source>
      <translation>{far}, an Station {station}</translation>
    </message>
    <message>
      <source>{fault}, {zone}</source>
      <translation>{fault}, {zone}</translation>
    </message>
    <message>
      <source>{field}</source>
      <translation>{field}</translation>
    </message>
    <message>
      <source>{field} cannot be above {limit}</source>
      <translation>{field} kann nicht über {limit} sein</translation>
    </message>
    <message>
      <source>{field} cannot be below {limit}</source>
      <translation>{field} darf nicht unter {limit} liegen</translation>
    </message>
    <message>
      <source>{field} differs from line {n}</source>
      <translation>{field} ist anders als in Zeile {n}</translation>
    </message>
    <message>
      <source>{field} from {before} to {now}</source>
      <translation>{field} von {before} zu {now}</translation>
    </message>
    <message>
      <source>{field} is one of {words}</source>
      <translation>{field} ist eins von {words}</translation>
    </message>
    <message>
      <source>{field} must be above {limit}</source>
      <translation>{field} muss über {limit} liegen</translation>
    </message>
    <message>
      <source>{field} names one thing twice</source>
      <translation>{field} nennt etwas zweimal</translation>
    </message>
    <message>
      <source>{field} of {fact} cannot be {value}</source>
      <translation>{field} von {fact} kann nicht {value} sein</translation>
    </message>
    <message>
      <source>{field} {value}</source>
      <translation>{field} {value}</translation>
    </message>
    <message>
      <source>{field}: each quantity is 1 or more</source>
      <translation>{field}: jede Menge ist 1 oder mehr</translation>
    </message>
    <message>
      <source>{field}: there is no {text}; write it as {example}</source>
      <translation>{field}: {text} gibt es nicht; so schreiben: {example}</translation>
    </message>
    <message>
      <source>{field}: touch one, or type it.</source>
      <translation>{field}: eins berühren oder tippen.</translation>
    </message>
    <message>
      <source>{field}: type it again.</source>
      <translation>{field}: noch einmal eingeben.</translation>
    </message>
    <message>
      <source>{field}: type it and press Enter.</source>
      <translation>{field}: tippen und Eingabe drücken.</translation>
    </message>
    <message>
      <source>{field}: type it as {example}.</source>
      <translation>{field}: so eintippen: {example}.</translation>
    </message>
    <message>
      <source>{field}: which column is it?</source>
      <translation>{field}: welche Spalte ist es?</translation>
    </message>
    <message>
      <source>{field}: write it as {example}</source>
      <translation>{field}: so schreiben: {example}</translation>
    </message>
    <message>
      <source>{field}: {column}</source>
      <translation>{field}: {column}</translation>
    </message>
    <message>
      <source>{field}: {value}</source>
      <translation>{field}: {value}</translation>
    </message>
    <message>
      <source>{file}</source>
      <translation>{file}</translation>
    </message>
    <message>
      <source>{file} cannot be read: {why}</source>
      <translation>{file} lässt sich nicht lesen: {why}</translation>
    </message>
    <message>
      <source>{file} cuts no part out of {mm} mm</source>
      <translation>{file} schneidet kein Teil aus {mm} mm</translation>
    </message>
    <message>
      <source>{file} does not say whether it is in mm or in inches</source>
      <translation>{file} sagt nicht, ob sie in mm oder in Zoll ist</translation>
    </message>
    <message>
      <source>{file} is a folder</source>
      <translation>{file} ist ein Ordner</translation>
    </message>
    <message>
      <source>{file} is being read</source>
      <translation>{file} wird gelesen</translation>
    </message>
    <message>
      <source>{file} is cut from it</source>
      <translation>{file} wird daraus gefräst</translation>
    </message>
    <message>
      <source>{file} is here</source>
      <translation>{file} ist da</translation>
    </message>
    <message>
      <source>{file} is kept as PDF in {folder} and opened.</source>
      <translation>{file} liegt als PDF in {folder} und ist geöffnet.</translation>
    </message>
    <message>
      <source>{file} is kept as PDF in {folder}. Plug the printer in and print it from there, or choose another: station printer {size}</source>
      <translation>{file} liegt als PDF in {folder}. Drucker anschließen und von dort drucken oder einen anderen wählen: station printer {size}</translation>
    </message>
    <message>
      <source>{file} is no cut file by its name</source>
      <translation>{file} ist dem Namen nach keine Fräsdatei</translation>
    </message>
    <message>
      <source>{file} is no plain file</source>
      <translation>{file} ist keine gewöhnliche Datei</translation>
    </message>
    <message>
      <source>{file} is no text. Save it as CSV and try again.</source>
      <translation>{file} ist kein Text. Als CSV speichern und noch einmal versuchen.</translation>
    </message>
    <message>
      <source>{file} is read</source>
      <translation>{file} ist gelesen</translation>
    </message>
    <message>
      <source>{file} is read like this. Touch what is not so: it is kept for its next revision</source>
      <translation>{file} wird so gelesen. Berühren, was nicht stimmt: Es gilt auch für die nächste Revision</translation>
    </message>
    <message>
      <source>{file} is revision {letter}</source>
      <translation>{file} ist Revision {letter}</translation>
    </message>
    <message>
      <source>{file} is too large for a list</source>
      <translation>{file} ist zu groß für eine Liste</translation>
    </message>
    <message>
      <source>{file} on {router}, {n} {n|sheet|sheets}</source>
      <translation>{file} auf {router}, {n} {n|Platte|Platten}</translation>
    </message>
    <message>
      <source>{file} was not printed</source>
      <translation>{file} wurde nicht gedruckt</translation>
    </message>
    <message>
      <source>{file} was released just now</source>
      <translation>{file} wurde eben freigegeben</translation>
    </message>
    <message>
      <source>{file}, and as a page beside it.</source>
      <translation>{file}, und als Seite daneben.</translation>
    </message>
    <message>
      <source>{file}, row {n}</source>
      <translation>{file}, Zeile {n}</translation>
    </message>
    <message>
      <source>{file}, {n} {n|sheet|sheets}</source>
      <translation>{file}, {n} {n|Platte|Platten}</translation>
    </message>
    <message>
      <source>{file}, {what}</source>
      <translation>{file}, {what}</translation>
    </message>
    <message>
      <source>{file}. Keep a copy away from this PC.</source>
      <translation>{file}. Eine Kopie außerhalb dieses PCs aufbewahren.</translation>
    </message>
    <message>
      <source>{file}: revision {letter} is approved</source>
      <translation>{file}: Revision {letter} ist freigegeben</translation>
    </message>
    <message>
      <source>{file}: why</source>
      <translation>{file}: warum</translation>
    </message>
    <message>
      <source>{file}: {approved}, {n} {n|sheet|sheets} to cut</source>
      <translation>{file}: {approved}, {n} {n|Platte|Platten} zu fräsen</translation>
    </message>
    <message>
      <source>{file}: {n} more {n|shape|shapes} not listed</source>
      <translation>{file}: {n} weitere {n|Form|Formen} nicht aufgeführt</translation>
    </message>
    <message>
      <source>{file}: {n} {n|problem|problems}</source>
      <translation>{file}: {n} {n|Fehler|Fehler}</translation>
    </message>
    <message>
      <source>{file}: {n} {n|thing|things} to look at</source>
      <translation>{file}: {n} {n|Sache|Sachen} anzusehen</translation>
    </message>
    <message>
      <source>{file}: {why}</source>
      <translation>{file}: {why}</translation>
    </message>
    <message>
      <source>{first} and {last}</source>
      <translation>{first} und {last}</translation>
    </message>
    <message>
      <source>{first} {next}</source>
      <translation>{first} {next}</translation>
    </message>
    <message>
      <source>{first}, {next}</source>
      <translation>{first}, {next}</translation>
    </message>
    <message>
      <source>{first}; {next}</source>
      <translation>{first}; {next}</translation>
    </message>
    <message>
      <source>{freed}, {c} loose {c|slug|slugs}</source>
      <translation>{freed}, {c} {c|loses Abfallstück|lose Abfallstücke}</translation>
    </message>
    <message>
      <source>{gone} {gone|is|are} missing from batch {batch}</source>
      <translation>{gone} {gone|fehlt|fehlen} von Los {batch}</translation>
    </message>
    <message>
      <source>{g} g</source>
      <translation>{g} g</translation>
    </message>
    <message>
      <source>{g} g on the scale, {grams} ± {plus} g expected</source>
      <translation>{g} g auf der Waage, {grams} ± {plus} g erwartet</translation>
    </message>
    <message>
      <source>{g} g on the scale: as it should be</source>
      <translation>{g} g auf der Waage: wie es sein soll</translation>
    </message>
    <message>
      <source>{g} g on the scale: can't tell</source>
      <translation>{g} g auf der Waage: unklar</translation>
    </message>
    <message>
      <source>{g} g on the scale: nothing is weighed here now</source>
      <translation>{g} g auf der Waage: hier wird jetzt nichts gewogen</translation>
    </message>
    <message>
      <source>{g} g, as it should be</source>
      <translation>{g} g, wie es sein soll</translation>
    </message>
    <message>
      <source>{g} g, weighed</source>
      <translation>{g} g, gewogen</translation>
    </message>
    <message>
      <source>{g} g: can't tell</source>
      <translation>{g} g: unklar</translation>
    </message>
    <message>
      <source>{g} g: look again</source>
      <translation>{g} g: noch einmal nachsehen</translation>
    </message>
    <message>
      <source>{g} ± {p} g</source>
      <translation>{g} ± {p} g</translation>
    </message>
    <message>
      <source>{held}; {n} of it left the shop already</source>
      <translation>{held}; {n} davon haben die Werkstatt schon verlassen</translation>
    </message>
    <message>
      <source>{here} {here|part|parts} here · {stubs} {stubs|tab stub|tab stubs} to trim</source>
      <translation>{here} {here|Teil|Teile} hier · {stubs} {stubs|Stegrest|Stegreste} zu verputzen</translation>
    </message>
    <message>
      <source>{id} is {lost} here: keep its zeros</source>
      <translation>{id} heißt hier {lost}: die Nullen behalten</translation>
    </message>
    <message>
      <source>{id} stands in line {n} already</source>
      <translation>{id} steht schon in Zeile {n}</translation>
    </message>
    <message>
      <source>{inside} of {wanted} {part}</source>
      <translation>{inside} von {wanted} {part}</translation>
    </message>
    <message>
      <source>{kind} follows from the work and is not set by hand</source>
      <translation>{kind} folgt aus der Arbeit und wird nicht von Hand gesetzt</translation>
    </message>
    <message>
      <source>{kind} {id}</source>
      <translation>{kind} {id}</translation>
    </message>
    <message>
      <source>{kind} {number}</source>
      <translation>{kind} {number}</translation>
    </message>
    <message>
      <source>{k|slip for sheet|slips for sheets} {sheets} of {all} · cut on {routers}</source>
      <translation>{k|Abschnitt für Platte|Abschnitte für Platten} {sheets} von {all} · gefräst auf {routers}</translation>
    </message>
    <message>
      <source>{label}, {unit}</source>
      <translation>{label}, {unit}</translation>
    </message>
    <message>
      <source>{lead} (usual, not entered)</source>
      <translation>{lead} (üblich, nicht eingetragen)</translation>
    </message>
    <message>
      <source>{leaves} · closed: {packs}</source>
      <translation>{leaves} · geschlossen: {packs}</translation>
    </message>
    <message>
      <source>{leaves} · nothing short</source>
      <translation>{leaves} · nichts fehlt</translation>
    </message>
    <message>
      <source>{leaves} · short {n} × {part}</source>
      <translation>{leaves} · es fehlen {n} × {part}</translation>
    </message>
    <message>
      <source>{leaves} · {short} owed</source>
      <translation>{leaves} · {short} offen</translation>
    </message>
    <message>
      <source>{left} m left, {need} m needed. Watch it; set zero first.</source>
      <translation>Noch {left} m, gebraucht {need} m. Im Auge behalten; erst Nullpunkt setzen.</translation>
    </message>
    <message>
      <source>{left} more like the {most} that are listed.</source>
      <translation>{left} weitere wie die {most}, die aufgeführt sind.</translation>
    </message>
    <message>
      <source>{left} {left|is|are} left here</source>
      <translation>{left} {left|ist|sind} hier übrig</translation>
    </message>
    <message>
      <source>{left} {part} left here, not {count}</source>
      <translation>{left} {part} hier übrig, nicht {count}</translation>
    </message>
    <message>
      <source>{left} {part} left here, not {n}</source>
      <translation>{left} {part} hier übrig, nicht {n}</translation>
    </message>
    <message>
      <source>{lines} · {state}</source>
      <translation>{lines} · {state}</translation>
    </message>
    <message>
      <source>{lines}, {parts} {parts|part|parts}</source>
      <translation>{lines}, {parts} {parts|Teil|Teile}</translation>
    </message>
    <message>
      <source>{list} with “{text}”: {count}, page {page} of {pages}</source>
      <translation>{list} mit „{text}“: {count}, Seite {page} von {pages}</translation>
    </message>
    <message>
      <source>{list} with “{text}”: {n}</source>
      <translation>{list} mit „{text}“: {n}</translation>
    </message>
    <message>
      <source>{list}: there is no {text}</source>
      <translation>{list}: {text} gibt es nicht</translation>
    </message>
    <message>
      <source>{list}: {count} and more, page {page} of {pages}</source>
      <translation>{list}: {count} und mehr, Seite {page} von {pages}</translation>
    </message>
    <message>
      <source>{list}: {count}, page {page} of {pages}</source>
      <translation>{list}: {count}, Seite {page} von {pages}</translation>
    </message>
    <message>
      <source>{low} to {high} mm</source>
      <translation>{low} bis {high} mm</translation>
    </message>
    <message>
      <source>{l} × {w} mm</source>
      <translation>{l} × {w} mm</translation>
    </message>
    <message>
      <source>{material} left</source>
      <translation>{material} übrig</translation>
    </message>
    <message>
      <source>{material} · {sheets} {sheets|sheet|sheets} · {count} {count|part|parts} a sheet, {tabs} {tabs|tab|tabs}</source>
      <translation>{material} · {sheets} {sheets|Platte|Platten} · {count} {count|Teil|Teile} je Platte, {tabs} {tabs|Steg|Stege}</translation>
    </message>
    <message>
      <source>{material}, lot {lot}</source>
      <translation>{material}, Charge {lot}</translation>
    </message>
    <message>
      <source>{material}: scan its lot</source>
      <translation>{material}: Charge scannen</translation>
    </message>
    <message>
      <source>{metres} m</source>
      <translation>{metres} m</translation>
    </message>
    <message>
      <source>{metres} m in all</source>
      <translation>{metres} m insgesamt</translation>
    </message>
    <message>
      <source>{metres} m left</source>
      <translation>{metres} m übrig</translation>
    </message>
    <message>
      <source>{minutes} min</source>
      <translation>{minutes} min</translation>
    </message>
    <message>
      <source>{minutes} min a sheet</source>
      <translation>{minutes} min je Platte</translation>
    </message>
    <message>
      <source>{minutes} min left</source>
      <translation>noch {minutes} min</translation>
    </message>
    <message>
      <source>{mm} mm</source>
      <translation>{mm} mm</translation>
    </message>
    <message>
      <source>{mm} mm is no thickness of this sheet</source>
      <translation>{mm} mm ist keine Dicke dieser Platte</translation>
    </message>
    <message>
      <source>{mm} mm read</source>
      <translation>{mm} mm gemessen</translation>
    </message>
    <message>
      <source>{mm} mm read on {router}</source>
      <translation>{mm} mm gemessen an {router}</translation>
    </message>
    <message>
      <source>{mm} mm: is that {size}?</source>
      <translation>{mm} mm: ist das {size}?</translation>
    </message>
    <message>
      <source>{mm} mm: within limits</source>
      <translation>{mm} mm: in den Grenzen</translation>
    </message>
    <message>
      <source>{most} of these on a sheet</source>
      <translation>{most} davon auf einer Platte</translation>
    </message>
    <message>
      <source>{name}</source>
      <translation>{name}</translation>
    </message>
    <message>
      <source>{name} cuts no parts out</source>
      <translation>{name} schneidet keine Teile aus</translation>
    </message>
    <message>
      <source>{name} does not run this file</source>
      <translation>{name} fährt diese Datei nicht</translation>
    </message>
    <message>
      <source>{name} instead</source>
      <translation>stattdessen {name}</translation>
    </message>
    <message>
      <source>{name} instead of {other}</source>
      <translation>{name} statt {other}</translation>
    </message>
    <message>
      <source>{name} is in the list</source>
      <translation>{name} steht in der Liste</translation>
    </message>
    <message>
      <source>{name} is missing</source>
      <translation>{name} fehlt</translation>
    </message>
    <message>
      <source>{name} it is</source>
      <translation>{name} also</translation>
    </message>
    <message>
      <source>{name} must be a list</source>
      <translation>{name} muss eine Liste sein</translation>
    </message>
    <message>
      <source>{name} must be {wanted}</source>
      <translation>{name} muss {wanted} sein</translation>
    </message>
    <message>
      <source>{name} needs {count} {count|value|values}</source>
      <translation>{name} braucht {count} {count|Wert|Werte}</translation>
    </message>
    <message>
      <source>{name} revision {letter} is approved</source>
      <translation>{name} Revision {letter} ist freigegeben</translation>
    </message>
    <message>
      <source>{name} {count}</source>
      <translation>{name} {count}</translation>
    </message>
    <message>
      <source>{name} · {price}</source>
      <translation>{name} · {price}</translation>
    </message>
    <message>
      <source>{name}: 0 left by the book</source>
      <translation>{name}: laut Buch 0 übrig</translation>
    </message>
    <message>
      <source>{name}: 0 left, order it</source>
      <translation>{name}: 0 übrig, bestellen</translation>
    </message>
    <message>
      <source>{name}: which router?</source>
      <translation>{name}: welche Fräse?</translation>
    </message>
    <message>
      <source>{name}: {n}</source>
      <translation>{name}: {n}</translation>
    </message>
    <message>
      <source>{name}: {n} there</source>
      <translation>{name}: {n} da</translation>
    </message>
    <message>
      <source>{name}: {qty} {part} by the book</source>
      <translation>{name}: {qty} {part} laut Buch</translation>
    </message>
    <message>
      <source>{new} new, {changed} changed, {same} as they are</source>
      <translation>{new} neu, {changed} geändert, {same} wie sie sind</translation>
    </message>
    <message>
      <source>{next} {how}</source>
      <translation>{next} {how}</translation>
    </message>
    <message>
      <source>{next} {what}.</source>
      <translation>{next} {what}.</translation>
    </message>
    <message>
      <source>{note} · {what}</source>
      <translation>{note} · {what}</translation>
    </message>
    <message>
      <source>{now} min a sheet instead of {was}.</source>
      <translation>{now} min je Platte statt {was}.</translation>
    </message>
    <message>
      <source>{now} mm after {was} mm</source>
      <translation>{now} mm nach {was} mm</translation>
    </message>
    <message>
      <source>{now} mm instead of {was}.</source>
      <translation>{now} mm statt {was}.</translation>
    </message>
    <message>
      <source>{now} {now|hole|holes} instead of {was}.</source>
      <translation>{now} {now|Loch|Löcher} statt {was}.</translation>
    </message>
    <message>
      <source>{now} {now|pocket|pockets} or grooves instead of {was}.</source>
      <translation>{now} {now|Tasche|Taschen} oder Nuten statt {was}.</translation>
    </message>
    <message>
      <source>{now} {now|tab|tabs} instead of {was}.</source>
      <translation>{now} {now|Steg|Stege} statt {was}.</translation>
    </message>
    <message>
      <source>{number} was not taken</source>
      <translation>{number} wurde nicht genommen</translation>
    </message>
    <message>
      <source>{number}, not put right</source>
      <translation>{number}, nicht berichtigt</translation>
    </message>
    <message>
      <source>{n|Batch|Batches} {batches} {n|is|are} held</source>
      <translation>{n|Los|Lose} {batches} {n|ist|sind} gesperrt</translation>
    </message>
    <message>
      <source>{n|pack sent|packs sent}</source>
      <translation>{n|Paket versandt|Pakete versandt}</translation>
    </message>
    <message>
      <source>{n|pack|packs} on it</source>
      <translation>{n|Paket|Pakete} darauf</translation>
    </message>
    <message>
      <source>{n|part|parts}</source>
      <translation>{n|Teil|Teile}</translation>
    </message>
    <message>
      <source>{n|piece|pieces}</source>
      <translation>{n|Stück|Stücke}</translation>
    </message>
    <message>
      <source>{n|sheet|sheets}</source>
      <translation>{n|Platte|Platten}</translation>
    </message>
    <message>
      <source>{n}</source>
      <translation>{n}</translation>
    </message>
    <message>
      <source>{n} %</source>
      <translation>{n} %</translation>
    </message>
    <message>
      <source>{n} CSV {n|file|files}</source>
      <translation>{n} CSV-{n|Datei|Dateien}</translation>
    </message>
    <message>
      <source>{n} GB free</source>
      <translation>{n} GB frei</translation>
    </message>
    <message>
      <source>{n} at popping</source>
      <translation>{n} beim Ausbrechen</translation>
    </message>
    <message>
      <source>{n} at popping still</source>
      <translation>{n} noch beim Ausbrechen</translation>
    </message>
    <message>
      <source>{n} away</source>
      <translation>{n} draußen</translation>
    </message>
    <message>
      <source>{n} begun {n|batch|batches} can't be cut to the end, another revision is approved: {names}</source>
      <translation>{n} {n|begonnenes Los kann|begonnene Lose können} nicht zu Ende gefräst werden, eine andere Revision ist freigegeben: {names}</translation>
    </message>
    <message>
      <source>{n} being cut</source>
      <translation>{n} werden gefräst</translation>
    </message>
    <message>
      <source>{n} by the book</source>
      <translation>{n} nach dem Buch</translation>
    </message>
    <message>
      <source>{n} by the book now. Packs count them down.</source>
      <translation>Laut Buch jetzt {n}. Pakete zählen sie herunter.</translation>
    </message>
    <message>
      <source>{n} by the book · {d} {d|pack|packs} damaged</source>
      <translation>{n} nach dem Buch · {d} {d|Paket|Pakete} beschädigt</translation>
    </message>
    <message>
      <source>{n} came back</source>
      <translation>{n} zurück</translation>
    </message>
    <message>
      <source>{n} cannot lie in one place</source>
      <translation>{n} können nicht an einem Platz liegen</translation>
    </message>
    <message>
      <source>{n} coming</source>
      <translation>{n} kommen</translation>
    </message>
    <message>
      <source>{n} cut {n|file|files}</source>
      <translation>{n} Fräs{n|datei|dateien}</translation>
    </message>
    <message>
      <source>{n} fewer than by the book</source>
      <translation>{n} weniger als gebucht</translation>
    </message>
    <message>
      <source>{n} files at once</source>
      <translation>{n} Dateien auf einmal</translation>
    </message>
    <message>
      <source>{n} for order {order}</source>
      <translation>{n} für Auftrag {order}</translation>
    </message>
    <message>
      <source>{n} for {order}</source>
      <translation>{n} für {order}</translation>
    </message>
    <message>
      <source>{n} free on rack {place}</source>
      <translation>{n} frei im Regal {place}</translation>
    </message>
    <message>
      <source>{n} free on the rack</source>
      <translation>{n} frei im Regal</translation>
    </message>
    <message>
      <source>{n} good</source>
      <translation>{n} gut</translation>
    </message>
    <message>
      <source>{n} h</source>
      <translation>{n} h</translation>
    </message>
    <message>
      <source>{n} held</source>
      <translation>{n} gesperrt</translation>
    </message>
    <message>
      <source>{n} in its pack</source>
      <translation>{n} im Paket</translation>
    </message>
    <message>
      <source>{n} in rework</source>
      <translation>{n} in Nacharbeit</translation>
    </message>
    <message>
      <source>{n} in the store are free</source>
      <translation>{n} im Lager sind frei</translation>
    </message>
    <message>
      <source>{n} in trimming</source>
      <translation>{n} beim Verputzen</translation>
    </message>
    <message>
      <source>{n} is no count of it</source>
      <translation>{n} ist keine Anzahl davon</translation>
    </message>
    <message>
      <source>{n} is no minimum</source>
      <translation>{n} ist kein Mindestbestand</translation>
    </message>
    <message>
      <source>{n} kept back</source>
      <translation>{n} zurückgehalten</translation>
    </message>
    <message>
      <source>{n} left</source>
      <translation>noch {n}</translation>
    </message>
    <message>
      <source>{n} left.</source>
      <translation>Noch {n}.</translation>
    </message>
    <message>
      <source>{n} like it are settled together</source>
      <translation>{n} solche werden zusammen erledigt</translation>
    </message>
    <message>
      <source>{n} min</source>
      <translation>{n} min</translation>
    </message>
    <message>
      <source>{n} missing</source>
      <translation>{n} fehlen</translation>
    </message>
    <message>
      <source>{n} more</source>
      <translation>noch {n}</translation>
    </message>
    <message>
      <source>{n} more are not listed. Back to the first</source>
      <translation>{n} weitere sind nicht aufgeführt. Zurück zu den ersten</translation>
    </message>
    <message>
      <source>{n} more than by the book</source>
      <translation>{n} mehr als gebucht</translation>
    </message>
    <message>
      <source>{n} more to put back.</source>
      <translation>Noch {n} zurückzulegen.</translation>
    </message>
    <message>
      <source>{n} more, then “{over}”.</source>
      <translation>Noch {n}, dann „{over}“.</translation>
    </message>
    <message>
      <source>{n} more: {n|its name is|their names are} no plain text. Rename, look again.</source>
      <translation>{n} weitere: {n|der Name ist|die Namen sind} kein reiner Text. Umbenennen, dann noch einmal nachsehen.</translation>
    </message>
    <message>
      <source>{n} more; mend these first.</source>
      <translation>Noch {n}; erst diese in Ordnung bringen.</translation>
    </message>
    <message>
      <source>{n} more; say it otherwise</source>
      <translation>{n} weitere; anders sagen</translation>
    </message>
    <message>
      <source>{n} not good</source>
      <translation>{n} nicht gut</translation>
    </message>
    <message>
      <source>{n} of batch {batch}</source>
      <translation>{n} von Los {batch}</translation>
    </message>
    <message>
      <source>{n} of it {n|is|are} spoiled</source>
      <translation>{n} davon {n|ist|sind} Ausschuss</translation>
    </message>
    <message>
      <source>{n} of the next part</source>
      <translation>{n} vom nächsten Teil</translation>
    </message>
    <message>
      <source>{n} of {all}</source>
      <translation>{n} von {all}</translation>
    </message>
    <message>
      <source>{n} of {all} in it</source>
      <translation>{n} von {all} darin</translation>
    </message>
    <message>
      <source>{n} of {all} made; the rest is left</source>
      <translation>{n} von {all} gemacht; der Rest bleibt</translation>
    </message>
    <message>
      <source>{n} of {least} {least|sheet|sheets}</source>
      <translation>{n} von {least} {least|Platte|Platten}</translation>
    </message>
    <message>
      <source>{n} of {mark}</source>
      <translation>{n} von {mark}</translation>
    </message>
    <message>
      <source>{n} of {mark} there</source>
      <translation>{n} von {mark} dort</translation>
    </message>
    <message>
      <source>{n} of {most}</source>
      <translation>{n} von {most}</translation>
    </message>
    <message>
      <source>{n} of {part} are too many</source>
      <translation>{n} von {part} sind zu viele</translation>
    </message>
    <message>
      <source>{n} of {part} too many leave {place} ({batch})</source>
      <translation>{n} von {part} zu viel verlassen {place} ({batch})</translation>
    </message>
    <message>
      <source>{n} on the rack</source>
      <translation>{n} im Regal</translation>
    </message>
    <message>
      <source>{n} on {n|its|their} way</source>
      <translation>{n} unterwegs</translation>
    </message>
    <message>
      <source>{n} other {n|place|places}</source>
      <translation>{n} {n|weiterer Platz|weitere Plätze}</translation>
    </message>
    <message>
      <source>{n} owed</source>
      <translation>{n} fehlen noch</translation>
    </message>
    <message>
      <source>{n} put back on the rack</source>
      <translation>{n} ins Regal zurückgelegt</translation>
    </message>
    <message>
      <source>{n} rework</source>
      <translation>{n} Nacharbeit</translation>
    </message>
    <message>
      <source>{n} spoiled</source>
      <translation>{n} Ausschuss</translation>
    </message>
    <message>
      <source>{n} still to be cut</source>
      <translation>{n} noch zu fräsen</translation>
    </message>
    <message>
      <source>{n} there</source>
      <translation>{n} da</translation>
    </message>
    <message>
      <source>{n} there by the book</source>
      <translation>{n} da laut Buch</translation>
    </message>
    <message>
      <source>{n} to count</source>
      <translation>{n} zu zählen</translation>
    </message>
    <message>
      <source>{n} to go.</source>
      <translation>Noch {n}.</translation>
    </message>
    <message>
      <source>{n} to put back: it is cancelled</source>
      <translation>{n} zurückzulegen: storniert</translation>
    </message>
    <message>
      <source>{n} to take</source>
      <translation>{n} zu nehmen</translation>
    </message>
    <message>
      <source>{n} too many: put back</source>
      <translation>{n} zu viel: zurücklegen</translation>
    </message>
    <message>
      <source>{n} under way</source>
      <translation>{n} unterwegs</translation>
    </message>
    <message>
      <source>{n} wanted</source>
      <translation>{n} verlangt</translation>
    </message>
    <message>
      <source>{n} {n|act|acts} of {since} to {until} {n|is|are} missing</source>
      <translation>{n} {n|Vorgang|Vorgänge} von {since} bis {until} {n|fehlt|fehlen}</translation>
    </message>
    <message>
      <source>{n} {n|backup|backups}</source>
      <translation>{n} {n|Sicherung|Sicherungen}</translation>
    </message>
    <message>
      <source>{n} {n|batch is|batches are} held: {names}</source>
      <translation>{n} {n|Los ist|Lose sind} gesperrt: {names}</translation>
    </message>
    <message>
      <source>{n} {n|batch waits|batches wait} for it</source>
      <translation>{n} {n|Los wartet|Lose warten} darauf</translation>
    </message>
    <message>
      <source>{n} {n|batch|batches}, newest first</source>
      <translation>{n} {n|Los|Lose}, Neuestes zuerst</translation>
    </message>
    <message>
      <source>{n} {n|batch|batches}, the oldest first</source>
      <translation>{n} {n|Los|Lose}, das älteste zuerst</translation>
    </message>
    <message>
      <source>{n} {n|bit lies|bits lie} in the drawer: no place in the router is free for {n|it|them} yet.</source>
      <translation>{n} {n|Fräser liegt|Fräser liegen} in der Schublade: In der Fräse ist noch kein Platz für {n|ihn|sie} frei.</translation>
    </message>
    <message>
      <source>{n} {n|cut|cuts} through the sheet, {long} mm, {n|frees|free} nothing.</source>
      <translation>{n} {n|Schnitt|Schnitte} durch die Platte, {long} mm, {n|löst|lösen} nichts heraus.</translation>
    </message>
    <message>
      <source>{n} {n|goes|go} back on the rack</source>
      <translation>{n} {n|geht|gehen} ins Regal zurück</translation>
    </message>
    <message>
      <source>{n} {n|hold-down|hold-downs} as proposed</source>
      <translation>{n} {n|Niederhalter|Niederhalter} wie vorgeschlagen</translation>
    </message>
    <message>
      <source>{n} {n|is|are} here, {seen} when you took it: {who}</source>
      <translation>{n} {n|ist|sind} hier, {seen} beim Nehmen: {who}</translation>
    </message>
    <message>
      <source>{n} {n|is|are} in the pack</source>
      <translation>{n} {n|ist|sind} im Paket</translation>
    </message>
    <message>
      <source>{n} {n|layer|layers}, large parts outermost</source>
      <translation>{n} {n|Lage|Lagen}, große Teile außen</translation>
    </message>
    <message>
      <source>{n} {n|layer|layers}: wrap it well</source>
      <translation>{n} {n|Lage|Lagen}: gut einwickeln</translation>
    </message>
    <message>
      <source>{n} {n|lies|lie} on the rack</source>
      <translation>{n} {n|liegt|liegen} im Regal</translation>
    </message>
    <message>
      <source>{n} {n|line|lines}</source>
      <translation>{n} {n|Zeile|Zeilen}</translation>
    </message>
    <message>
      <source>{n} {n|more like it is|more like it are} settled with it.</source>
      <translation>{n} {n|weiteres solches wird|weitere solche werden} mit erledigt.</translation>
    </message>
    <message>
      <source>{n} {n|order is|orders are} begun or gone and {n|stays|stay}: see Needs a look.</source>
      <translation>{n} {n|Auftrag ist|Aufträge sind} begonnen oder fort und {n|bleibt|bleiben}: siehe „Bitte ansehen“.</translation>
    </message>
    <message>
      <source>{n} {n|order is|orders are} late: {names}</source>
      <translation>{n} {n|Auftrag ist|Aufträge sind} überfällig: {names}</translation>
    </message>
    <message>
      <source>{n} {n|order is|orders are} put down</source>
      <translation>{n} {n|Auftrag ist|Aufträge sind} weggelegt</translation>
    </message>
    <message>
      <source>{n} {n|order stays|orders stay} here: sort them at the bench.</source>
      <translation>{n} {n|Auftrag bleibt|Aufträge bleiben} hier: am Packtisch sortieren.</translation>
    </message>
    <message>
      <source>{n} {n|order waits|orders wait} for it now</source>
      <translation>{n} {n|Auftrag wartet|Aufträge warten} jetzt darauf</translation>
    </message>
    <message>
      <source>{n} {n|order waits|orders wait} for {part}</source>
      <translation>{n} {n|Auftrag wartet|Aufträge warten} auf {part}</translation>
    </message>
    <message>
      <source>{n} {n|order|orders} on this walk</source>
      <translation>{n} {n|Auftrag|Aufträge} auf diesem Gang</translation>
    </message>
    <message>
      <source>{n} {n|order|orders} would lack it: {names}. Count once more, or say that you are sure.</source>
      <translation>{n} {n|Auftrag|Aufträgen} fehlte es dann: {names}. Zähle noch einmal, oder sage, dass du sicher bist.</translation>
    </message>
    <message>
      <source>{n} {n|order|orders}, first due {due}</source>
      <translation>{n} {n|Auftrag|Aufträge}, erster fällig {due}</translation>
    </message>
    <message>
      <source>{n} {n|pack|packs}</source>
      <translation>{n} {n|Paket|Pakete}</translation>
    </message>
    <message>
      <source>{n} {n|pack|packs} of it on the shelf</source>
      <translation>{n} {n|Paket|Pakete} davon auf Vorrat</translation>
    </message>
    <message>
      <source>{n} {n|pack|packs} on it</source>
      <translation>{n} {n|Paket|Pakete} darauf</translation>
    </message>
    <message>
      <source>{n} {n|pack|packs} opened again</source>
      <translation>{n} {n|Paket|Pakete} wieder geöffnet</translation>
    </message>
    <message>
      <source>{n} {n|pack|packs}: wrap it well</source>
      <translation>{n} {n|Paket|Pakete}: gut einwickeln</translation>
    </message>
    <message>
      <source>{n} {n|part lies|parts lie} there</source>
      <translation>{n} {n|Teil liegt|Teile liegen} dort</translation>
    </message>
    <message>
      <source>{n} {n|part|parts}</source>
      <translation>{n} {n|Teil|Teile}</translation>
    </message>
    <message>
      <source>{n} {n|part|parts} a sheet, {minutes} min, {bits} {bits|bit|bits}.</source>
      <translation>{n} {n|Teil|Teile} je Platte, {minutes} min, {bits} Fräser.</translation>
    </message>
    <message>
      <source>{n} {n|piece is|pieces are} under way: more would wait</source>
      <translation>{n} Stück {n|ist|sind} unterwegs: mehr würde warten</translation>
    </message>
    <message>
      <source>{n} {n|piece|pieces}</source>
      <translation>{n} {n|Stück|Stücke}</translation>
    </message>
    <message>
      <source>{n} {n|piece|pieces} may go.</source>
      <translation>{n} {n|Stück|Stücke} dürfen gehen.</translation>
    </message>
    <message>
      <source>{n} {n|piece|pieces} to fetch</source>
      <translation>{n} {n|Teil|Teile} zu holen</translation>
    </message>
    <message>
      <source>{n} {n|problem|problems}</source>
      <translation>{n} {n|Problem|Probleme}</translation>
    </message>
    <message>
      <source>{n} {n|problem|problems}: nothing was taken in</source>
      <translation>{n} {n|Fehler|Fehler}: nichts wurde übernommen</translation>
    </message>
    <message>
      <source>{n} {n|purchase|purchases} should have come: {names}</source>
      <translation>{n} {n|Bestellung sollte|Bestellungen sollten} gekommen sein: {names}</translation>
    </message>
    <message>
      <source>{n} {n|reason says|reasons say} more now of what follows from them</source>
      <translation>{n} {n|Grund sagt|Gründe sagen} jetzt mehr darüber, was aus ihnen folgt</translation>
    </message>
    <message>
      <source>{n} {n|recount|recounts} of it not settled</source>
      <translation>{n} {n|Nachzählung|Nachzählungen} nicht geklärt</translation>
    </message>
    <message>
      <source>{n} {n|router|routers}</source>
      <translation>{n} {n|Fräse|Fräsen}</translation>
    </message>
    <message>
      <source>{n} {n|shape is|shapes are} new: say which {n|part it is|parts they are}.</source>
      <translation>{n} {n|Form ist|Formen sind} neu: sagen, welches {n|Teil es ist|Teile es sind}.</translation>
    </message>
    <message>
      <source>{n} {n|sheet lies|sheets lie} between two runs: they are finished.</source>
      <translation>{n} {n|Platte liegt|Platten liegen} zwischen zwei Durchgängen: sie werden fertig bearbeitet.</translation>
    </message>
    <message>
      <source>{n} {n|sheet was|sheets were} not made</source>
      <translation>{n} {n|Platte wurde|Platten wurden} nicht gemacht</translation>
    </message>
    <message>
      <source>{n} {n|sheet|sheets}</source>
      <translation>{n} {n|Platte|Platten}</translation>
    </message>
    <message>
      <source>{n} {n|sheet|sheets} cannot come at once</source>
      <translation>{n} {n|Platte kann|Platten können} nicht auf einmal kommen</translation>
    </message>
    <message>
      <source>{n} {n|sheet|sheets} cut</source>
      <translation>{n} {n|Platte|Platten} gefräst</translation>
    </message>
    <message>
      <source>{n} {n|sheet|sheets} for the rack put off</source>
      <translation>{n} {n|Platte|Platten} fürs Regal aufgeschoben</translation>
    </message>
    <message>
      <source>{n} {n|sheet|sheets} left</source>
      <translation>noch {n} {n|Platte|Platten}</translation>
    </message>
    <message>
      <source>{n} {n|sheet|sheets} of lot {lot} {n|lies|lie} there: {place}</source>
      <translation>{n} {n|Platte|Platten} der Charge {lot} {n|liegt|liegen} noch da: {place}</translation>
    </message>
    <message>
      <source>{n} {n|sheet|sheets} of {material}</source>
      <translation>{n} {n|Platte|Platten} {material}</translation>
    </message>
    <message>
      <source>{n} {n|sheet|sheets} of {material} in the store {n|is|are} free.</source>
      <translation>{n} {n|Platte|Platten} {material} im Lager {n|ist|sind} frei.</translation>
    </message>
    <message>
      <source>{n} {n|sheet|sheets} since the spoilboard was flat. Cut it flat after this one.</source>
      <translation>{n} {n|Platte|Platten}, seit die Opferplatte plan war. Danach plan fräsen.</translation>
    </message>
    <message>
      <source>{n} {n|sheet|sheets} still to be cut</source>
      <translation>noch {n} {n|Platte|Platten} zu fräsen</translation>
    </message>
    <message>
      <source>{n} {n|stays|stay} here under {n|its slip|their slips}.</source>
      <translation>{n} {n|bleibt|bleiben} hier unter {n|ihrem Abschnitt|ihren Abschnitten}.</translation>
    </message>
    <message>
      <source>{n} {n|stays|stay} in rack {place}.</source>
      <translation>{n} {n|bleibt|bleiben} in Regal {place}.</translation>
    </message>
    <message>
      <source>{n} {n|stops|stop} it: mend the file. Do not cut it so.</source>
      <translation>{n} {n|hält|halten} sie auf: Datei in Ordnung bringen, so nicht fräsen.</translation>
    </message>
    <message>
      <source>{n} {n|tab|tabs} instead of {old}.</source>
      <translation>{n} {n|Steg|Stege} statt {old}.</translation>
    </message>
    <message>
      <source>{n} {n|thing is|things are} on {n|its|their} way</source>
      <translation>{n} {n|Sache ist|Sachen sind} unterwegs</translation>
    </message>
    <message>
      <source>{n} {n|thing needs|things need} a look</source>
      <translation>{n} {n|Sache ist|Sachen sind} anzusehen</translation>
    </message>
    <message>
      <source>{n} {n|thing|things} in its file must be mended first</source>
      <translation>{n} {n|Sache|Sachen} in der Datei zuerst in Ordnung bringen</translation>
    </message>
    <message>
      <source>{n} {n|value|values}, wanted: {wanted}</source>
      <translation>{n} {n|Wert|Werte}, gebraucht: {wanted}</translation>
    </message>
    <message>
      <source>{n} {n|waits|wait} in a work area</source>
      <translation>{n} {n|wartet|warten} in einem Arbeitsbereich</translation>
    </message>
    <message>
      <source>{n} {part}</source>
      <translation>{n} {part}</translation>
    </message>
    <message>
      <source>{n} {part} (rack {place})</source>
      <translation>{n} {part} (Regal {place})</translation>
    </message>
    <message>
      <source>{n} {part} are short: “Part missing” has the ways on.</source>
      <translation>{n} {part} fehlen: „Teil fehlt“ zeigt, wie es weitergeht.</translation>
    </message>
    <message>
      <source>{n} {part} came back</source>
      <translation>{n} {part} kamen zurück</translation>
    </message>
    <message>
      <source>{n} {part} came back: batch {batch}</source>
      <translation>{n} {part} kamen zurück: Los {batch}</translation>
    </message>
    <message>
      <source>{n} {part} from order {other} to order {order}</source>
      <translation>{n} {part} aus Auftrag {other} in Auftrag {order}</translation>
    </message>
    <message>
      <source>{n} {part} have left by the book</source>
      <translation>{n} {part} sind laut Buch fort</translation>
    </message>
    <message>
      <source>{n} {part} of batch {batch}</source>
      <translation>{n} {part} von Los {batch}</translation>
    </message>
    <message>
      <source>{n} {part} of order {order} came back: {why}</source>
      <translation>{n} {part} von Auftrag {order} kamen zurück: {why}</translation>
    </message>
    <message>
      <source>{n} {part} of pack {pack} {n|is|are} still away by the book</source>
      <translation>Von Paket {pack} sind laut Buch noch {n} {part} draußen</translation>
    </message>
    <message>
      <source>{n} {part} would be owed</source>
      <translation>{n} {part} blieben offen</translation>
    </message>
    <message>
      <source>{n} {part} {n|is|are} owed to order {order}</source>
      <translation>{n} {part} {n|steht|stehen} für Auftrag {order} noch aus</translation>
    </message>
    <message>
      <source>{n} {part} {n|is|are} wanted</source>
      <translation>{n} {part} {n|wird|werden} gebraucht</translation>
    </message>
    <message>
      <source>{n} {product} for the shelf</source>
      <translation>{n} {product} für den Vorrat</translation>
    </message>
    <message>
      <source>{n} {run}</source>
      <translation>{n} {run}</translation>
    </message>
    <message>
      <source>{n} × {each}</source>
      <translation>{n} × {each}</translation>
    </message>
    <message>
      <source>{n} × {mailer} received</source>
      <translation>{n} × {mailer} angenommen</translation>
    </message>
    <message>
      <source>{n} × {part}</source>
      <translation>{n} × {part}</translation>
    </message>
    <message>
      <source>{n} × {part} counted out: {why}</source>
      <translation>{n} × {part} herausgezählt: {why}</translation>
    </message>
    <message>
      <source>{n} × {part} in the pack</source>
      <translation>{n} × {part} im Paket</translation>
    </message>
    <message>
      <source>{n} × {part} it is</source>
      <translation>{n} × {part}, so ist es</translation>
    </message>
    <message>
      <source>{n} × {part} put back: rack {place}</source>
      <translation>{n} × {part} zurückgelegt: Regal {place}</translation>
    </message>
    <message>
      <source>{n} × {part} short</source>
      <translation>{n} × {part} fehlen</translation>
    </message>
    <message>
      <source>{n} × {part} spoiled</source>
      <translation>{n} × {part} Ausschuss</translation>
    </message>
    <message>
      <source>{n} × {part}, not {was}: {inside} in the pack</source>
      <translation>{n} × {part}, nicht {was}: {inside} im Paket</translation>
    </message>
    <message>
      <source>{n} × {part}: {shares}</source>
      <translation>{n} × {part}: {shares}</translation>
    </message>
    <message>
      <source>{n} × {product}</source>
      <translation>{n} × {product}</translation>
    </message>
    <message>
      <source>{n} × {product}: {inside}</source>
      <translation>{n} × {product}: {inside}</translation>
    </message>
    <message>
      <source>{n} × {what}</source>
      <translation>{n} × {what}</translation>
    </message>
    <message>
      <source>{n}, {m} left out</source>
      <translation>{n}, {m} ausgelassen</translation>
    </message>
    <message>
      <source>{n}: {what}</source>
      <translation>{n}: {what}</translation>
    </message>
    <message>
      <source>{on_it}, off at {at}</source>
      <translation>{on_it}, fertig um {at}</translation>
    </message>
    <message>
      <source>{on_it}, should be off since {at}</source>
      <translation>{on_it}, sollte seit {at} fertig sein</translation>
    </message>
    <message>
      <source>{orders} · {where}</source>
      <translation>{orders} · {where}</translation>
    </message>
    <message>
      <source>{packs}, {goes}</source>
      <translation>{packs}, {goes}</translation>
    </message>
    <message>
      <source>{paper} ({why})</source>
      <translation>{paper} ({why})</translation>
    </message>
    <message>
      <source>{paper} {id}</source>
      <translation>{paper} {id}</translation>
    </message>
    <message>
      <source>{parts} left: {who}.</source>
      <translation>{parts} übrig: {who}.</translation>
    </message>
    <message>
      <source>{parts} to trim: say what is not good.</source>
      <translation>{parts} zu verputzen: sagen, was nicht gut ist.</translation>
    </message>
    <message>
      <source>{parts} …</source>
      <translation>{parts} …</translation>
    </message>
    <message>
      <source>{parts}: say what is not good, pass on.</source>
      <translation>{parts}: sagen, was nicht gut ist, weitergeben.</translation>
    </message>
    <message>
      <source>{parts}: say which are good.</source>
      <translation>{parts}: sagen, welche gut sind.</translation>
    </message>
    <message>
      <source>{part}</source>
      <translation>{part}</translation>
    </message>
    <message>
      <source>{part} agrees with its master</source>
      <translation>{part} stimmt mit dem Muster</translation>
    </message>
    <message>
      <source>{part} below its minimum of {mark}</source>
      <translation>{part} unter seinem Mindestbestand von {mark}</translation>
    </message>
    <message>
      <source>{part} blocks {n}</source>
      <translation>{part} hält {n} auf</translation>
    </message>
    <message>
      <source>{part} blocks {n} or more</source>
      <translation>{part} hält {n} oder mehr auf</translation>
    </message>
    <message>
      <source>{part} came back; {n} {n|is|are} away by the book</source>
      <translation>{part} kam zurück; {n} {n|ist|sind} laut Buch draußen</translation>
    </message>
    <message>
      <source>{part} cannot be cut yet</source>
      <translation>{part} kann noch nicht gefräst werden</translation>
    </message>
    <message>
      <source>{part} differs from its master</source>
      <translation>{part} weicht vom Muster ab</translation>
    </message>
    <message>
      <source>{part} for packs ahead and own pushes</source>
      <translation>{part} für Vorrat gepackt und eigene Anläufe</translation>
    </message>
    <message>
      <source>{part} has its place there</source>
      <translation>{part} hat dort seinen Platz</translation>
    </message>
    <message>
      <source>{part} has no outline in the book. Choose by eye.</source>
      <translation>{part} hat keinen Umriss im Buch. Nach Augenmaß wählen.</translation>
    </message>
    <message>
      <source>{part} has no place on the rack</source>
      <translation>{part} hat keinen Platz im Regal</translation>
    </message>
    <message>
      <source>{part} has no rack place</source>
      <translation>{part} hat keinen Regalplatz</translation>
    </message>
    <message>
      <source>{part} in order {order} is held</source>
      <translation>{part} in Auftrag {order} ist gesperrt</translation>
    </message>
    <message>
      <source>{part} in rack {place} is held: “Part missing” has the ways on.</source>
      <translation>{part} in Regal {place} ist gesperrt: „Teil fehlt“ zeigt, was möglich ist.</translation>
    </message>
    <message>
      <source>{part} is chosen. Touch the other row first, or scan the right card.</source>
      <translation>{part} ist gewählt. Zuerst die andere Zeile berühren oder die richtige Karte scannen.</translation>
    </message>
    <message>
      <source>{part} is in none of these orders, or fetched already</source>
      <translation>{part} ist in keinem dieser Aufträge, oder schon geholt</translation>
    </message>
    <message>
      <source>{part} is new: {n} a sheet.</source>
      <translation>{part} ist neu: {n} je Platte.</translation>
    </message>
    <message>
      <source>{part} is no longer cut.</source>
      <translation>{part} wird nicht mehr gefräst.</translation>
    </message>
    <message>
      <source>{part} is not in batch {batch}</source>
      <translation>{part} ist nicht in Los {batch}</translation>
    </message>
    <message>
      <source>{part} is not in order {order}</source>
      <translation>{part} ist nicht in Auftrag {order}</translation>
    </message>
    <message>
      <source>{part} is not missing</source>
      <translation>{part} fehlt nicht</translation>
    </message>
    <message>
      <source>{part} is not short</source>
      <translation>{part} ist nicht zu wenig</translation>
    </message>
    <message>
      <source>{part} is not used: {n} there, {wanted} wanted</source>
      <translation>{part} wird nicht gebraucht: {n} da, {wanted} gewünscht</translation>
    </message>
    <message>
      <source>{part} is there now</source>
      <translation>{part} ist jetzt da</translation>
    </message>
    <message>
      <source>{part} was tried twice</source>
      <translation>{part} wurde zweimal versucht</translation>
    </message>
    <message>
      <source>{part} {size} {low} to {high}</source>
      <translation>{part} {size} {low} bis {high}</translation>
    </message>
    <message>
      <source>{part} {size}: {mm} mm, limits {low} to {high}</source>
      <translation>{part} {size}: {mm} mm, Grenzen {low} bis {high}</translation>
    </message>
    <message>
      <source>{part}, all batches together</source>
      <translation>{part}, alle Lose zusammen</translation>
    </message>
    <message>
      <source>{part}, batch {batch}</source>
      <translation>{part}, Los {batch}</translation>
    </message>
    <message>
      <source>{part}, minimum {mark}</source>
      <translation>{part}, Mindestbestand {mark}</translation>
    </message>
    <message>
      <source>{part}, {n} {n|tab|tabs}: {where}.</source>
      <translation>{part}, {n} {n|Steg|Stege}: {where}.</translation>
    </message>
    <message>
      <source>{part}, {size}</source>
      <translation>{part}, {size}</translation>
    </message>
    <message>
      <source>{part}, {size}, is not measured yet</source>
      <translation>{part}, {size}, ist noch nicht gemessen</translation>
    </message>
    <message>
      <source>{part}: density as</source>
      <translation>{part}: Dichte wie</translation>
    </message>
    <message>
      <source>{part}: its tabs are elsewhere.</source>
      <translation>{part}: seine Stege liegen anders.</translation>
    </message>
    <message>
      <source>{part}: minimum {before} → {after}</source>
      <translation>{part}: Mindestbestand {before} → {after}</translation>
    </message>
    <message>
      <source>{part}: no weight, no outline. Count the pack.</source>
      <translation>{part}: kein Gewicht, kein Umriss. Das Paket nachzählen.</translation>
    </message>
    <message>
      <source>{part}: not used</source>
      <translation>{part}: nicht gebraucht</translation>
    </message>
    <message>
      <source>{part}: one less</source>
      <translation>{part}: eins weniger</translation>
    </message>
    <message>
      <source>{part}: one more</source>
      <translation>{part}: eins mehr</translation>
    </message>
    <message>
      <source>{part}: the minimum is {n} already</source>
      <translation>{part}: Der Mindestbestand ist schon {n}</translation>
    </message>
    <message>
      <source>{part}: {book} by the book, {counted} counted in its rack place</source>
      <translation>{part}: {book} laut Buch, {counted} am Regalplatz gezählt</translation>
    </message>
    <message>
      <source>{part}: {count} here</source>
      <translation>{part}: {count} hier</translation>
    </message>
    <message>
      <source>{part}: {count} {what}</source>
      <translation>{part}: {count} {what}</translation>
    </message>
    <message>
      <source>{part}: {days} days</source>
      <translation>{part}: {days} Tage</translation>
    </message>
    <message>
      <source>{part}: {mark}</source>
      <translation>{part}: {mark}</translation>
    </message>
    <message>
      <source>{part}: {now} instead of {was} a sheet.</source>
      <translation>{part}: {now} statt {was} je Platte.</translation>
    </message>
    <message>
      <source>{part}: {now} mm instead of {was}.</source>
      <translation>{part}: {now} mm statt {was}.</translation>
    </message>
    <message>
      <source>{part}: {now} {now|tab|tabs} instead of {was}.</source>
      <translation>{part}: {now} {now|Steg|Stege} statt {was}.</translation>
    </message>
    <message>
      <source>{part}: {n} in rack {place} by the book</source>
      <translation>{part}: laut Buch {n} in Regal {place}</translation>
    </message>
    <message>
      <source>{part}: {n} on {rack}, {promised} promised</source>
      <translation>{part}: {n} in {rack}, {promised} versprochen</translation>
    </message>
    <message>
      <source>{part}: {n} {n|has|have} other tabs.</source>
      <translation>{part}: {n} {n|hat|haben} andere Stege.</translation>
    </message>
    <message>
      <source>{part}: {n} {n|lies|lie} elsewhere on the sheet.</source>
      <translation>{part}: {n} {n|liegt|liegen} anders auf der Platte.</translation>
    </message>
    <message>
      <source>{part}: {size}</source>
      <translation>{part}: {size}</translation>
    </message>
    <message>
      <source>{part}: {use} used a day</source>
      <translation>{part}: {use} am Tag gebraucht</translation>
    </message>
    <message>
      <source>{part}: {what}</source>
      <translation>{part}: {what}</translation>
    </message>
    <message>
      <source>{pieces}, to be made good</source>
      <translation>{pieces}, zur Nacharbeit</translation>
    </message>
    <message>
      <source>{place}</source>
      <translation>{place}</translation>
    </message>
    <message>
      <source>{place} · {left}</source>
      <translation>{place} · {left}</translation>
    </message>
    <message>
      <source>{place}: {book} by the book, {counted} counted</source>
      <translation>{place}: {book} laut Buch, {counted} gezählt</translation>
    </message>
    <message>
      <source>{place}: {n}</source>
      <translation>{place}: {n}</translation>
    </message>
    <message>
      <source>{popping} in popping, {trimming} in trimming</source>
      <translation>{popping} beim Ausbrechen, {trimming} beim Verputzen</translation>
    </message>
    <message>
      <source>{price} cheaper than one</source>
      <translation>{price} billiger als eins</translation>
    </message>
    <message>
      <source>{product} is not packed ahead</source>
      <translation>{product} wird nicht auf Vorrat gepackt</translation>
    </message>
    <message>
      <source>{product}: no {n} whole {n|set|sets} to go</source>
      <translation>{product}: keine {n} ganzen {n|Satz|Sätze} zu packen</translation>
    </message>
    <message>
      <source>{product}: the rack has parts for {n}, {wanted} wanted</source>
      <translation>{product}: Das Regal hat Teile für {n}, {wanted} gewünscht</translation>
    </message>
    <message>
      <source>{quantity} found, {left} still missing</source>
      <translation>{quantity} gefunden, {left} fehlen noch</translation>
    </message>
    <message>
      <source>{quantity} split off as batch {child}, {left} {left|stays|stay}</source>
      <translation>{quantity} als Los {child} abgetrennt, {left} {left|bleibt|bleiben}</translation>
    </message>
    <message>
      <source>{question}: {answer}</source>
      <translation>{question}: {answer}</translation>
    </message>
    <message>
      <source>{rate} an hour</source>
      <translation>{rate} je Stunde</translation>
    </message>
    <message>
      <source>{reading} mm read, limits are {low} to {high}</source>
      <translation>{reading} mm gemessen, Grenzen {low} bis {high}</translation>
    </message>
    <message>
      <source>{ready} of {n} whole</source>
      <translation>{ready} von {n} ganz</translation>
    </message>
    <message>
      <source>{read} mm read</source>
      <translation>{read} mm gemessen</translation>
    </message>
    <message>
      <source>{read} mm: once more</source>
      <translation>{read} mm: noch einmal</translation>
    </message>
    <message>
      <source>{router}</source>
      <translation>{router}</translation>
    </message>
    <message>
      <source>{router} can't run this cut file</source>
      <translation>{router} kann diese Fräsdatei nicht fahren</translation>
    </message>
    <message>
      <source>{router} can't run what is next on sheet {n}</source>
      <translation>{router} kann nicht, was auf Platte {n} als Nächstes kommt</translation>
    </message>
    <message>
      <source>{router} can't run {run}</source>
      <translation>{router} kann {run} nicht ausführen</translation>
    </message>
    <message>
      <source>{router} ends first</source>
      <translation>{router} ist zuerst fertig</translation>
    </message>
    <message>
      <source>{router} is in front of you</source>
      <translation>{router} steht vor Ihnen</translation>
    </message>
    <message>
      <source>{router} is not served here</source>
      <translation>{router} wird hier nicht bedient</translation>
    </message>
    <message>
      <source>{router} is not stopped</source>
      <translation>{router} steht nicht</translation>
    </message>
    <message>
      <source>{router} is re-homed</source>
      <translation>{router} ist neu referenziert</translation>
    </message>
    <message>
      <source>{router} is stopped since {at}</source>
      <translation>{router} steht seit {at}</translation>
    </message>
    <message>
      <source>{router} need not be re-homed</source>
      <translation>{router} muss nicht neu referenziert werden</translation>
    </message>
    <message>
      <source>{router} needs you next</source>
      <translation>{router} braucht dich als Nächstes</translation>
    </message>
    <message>
      <source>{router} stopped again at {at}</source>
      <translation>{router} steht seit {at} wieder</translation>
    </message>
    <message>
      <source>{router} stopped: {why}</source>
      <translation>{router} steht: {why}</translation>
    </message>
    <message>
      <source>{router} · {bed}</source>
      <translation>{router} · {bed}</translation>
    </message>
    <message>
      <source>{router}, due {at}</source>
      <translation>{router}, fällig {at}</translation>
    </message>
    <message>
      <source>{router}, {at}</source>
      <translation>{router}, {at}</translation>
    </message>
    <message>
      <source>{router}, {bed}</source>
      <translation>{router}, {bed}</translation>
    </message>
    <message>
      <source>{router}: {doing}</source>
      <translation>{router}: {doing}</translation>
    </message>
    <message>
      <source>{router}: {standing}</source>
      <translation>{router}: {standing}</translation>
    </message>
    <message>
      <source>{row}: {what}</source>
      <translation>{row}: {what}</translation>
    </message>
    <message>
      <source>{run} cuts parts out of a sheet of its own: it is no run</source>
      <translation>{run} schneidet Teile aus einer eigenen Platte: das ist kein Durchgang</translation>
    </message>
    <message>
      <source>{run} is for another material</source>
      <translation>{run} ist für ein anderes Material</translation>
    </message>
    <message>
      <source>{run} is to run, {letter} is approved</source>
      <translation>{run} soll laufen, freigegeben ist {letter}</translation>
    </message>
    <message>
      <source>{run} on router {routers}</source>
      <translation>{run} auf Fräse {routers}</translation>
    </message>
    <message>
      <source>{said} (taken back)</source>
      <translation>{said} (zurückgenommen)</translation>
    </message>
    <message>
      <source>{said} {local}</source>
      <translation>{said} {local}</translation>
    </message>
    <message>
      <source>{said}, retired</source>
      <translation>{said}, außer Gebrauch</translation>
    </message>
    <message>
      <source>{share} % of its life</source>
      <translation>{share} % der Standzeit</translation>
    </message>
    <message>
      <source>{sheets} {sheets|sheet|sheets} received, lot {lot}</source>
      <translation>{sheets} {sheets|Platte|Platten} angenommen, Charge {lot}</translation>
    </message>
    <message>
      <source>{short} On {router}: {real} min.</source>
      <translation>{short} Auf {router}: {real} min.</translation>
    </message>
    <message>
      <source>{short} On {router}: {real} ± {spread} min.</source>
      <translation>{short} Auf {router}: {real} ± {spread} min.</translation>
    </message>
    <message>
      <source>{short} and more</source>
      <translation>{short} und mehr</translation>
    </message>
    <message>
      <source>{sizes} mm</source>
      <translation>{sizes} mm</translation>
    </message>
    <message>
      <source>{size} mm</source>
      <translation>{size} mm</translation>
    </message>
    <message>
      <source>{size} mm again, by hand</source>
      <translation>noch einmal {size} mm, von Hand</translation>
    </message>
    <message>
      <source>{size} mm bit</source>
      <translation>Fräser {size} mm</translation>
    </message>
    <message>
      <source>{size} mm is no bit's diameter</source>
      <translation>{size} mm ist kein Durchmesser eines Fräsers</translation>
    </message>
    <message>
      <source>{size} mm, no. {bit}: {left} m left, {need} m needed</source>
      <translation>{size} mm, Nr. {bit}: noch {left} m, gebraucht {need} m</translation>
    </message>
    <message>
      <source>{size} mm: none in the drawer</source>
      <translation>{size} mm: keiner in der Schublade</translation>
    </message>
    <message>
      <source>{size} paper</source>
      <translation>Papier {size}</translation>
    </message>
    <message>
      <source>{size}, about {mm} mm</source>
      <translation>{size}, etwa {mm} mm</translation>
    </message>
    <message>
      <source>{size}, {n} a sheet</source>
      <translation>{size}, {n} je Platte</translation>
    </message>
    <message>
      <source>{size}, {n} a sheet. Against {part}: {what}</source>
      <translation>{size}, {n} je Platte. Gegenüber {part}: {what}</translation>
    </message>
    <message>
      <source>{size}: right from {low} to {high} mm</source>
      <translation>{size}: richtig von {low} bis {high} mm</translation>
    </message>
    <message>
      <source>{source}. The text is read again with what you say.</source>
      <translation>{source}. Der Text wird mit dem, was Sie sagen, noch einmal gelesen.</translation>
    </message>
    <message>
      <source>{spoiled} spoiled</source>
      <translation>{spoiled} Ausschuss</translation>
    </message>
    <message>
      <source>{state}: change it</source>
      <translation>{state}: ändern</translation>
    </message>
    <message>
      <source>{s} s</source>
      <translation>{s} s</translation>
    </message>
    <message>
      <source>{text}</source>
      <translation>{text}</translation>
    </message>
    <message>
      <source>{text} is no count</source>
      <translation>{text} ist keine Anzahl</translation>
    </message>
    <message>
      <source>{text} is no number</source>
      <translation>{text} ist keine Zahl</translation>
    </message>
    <message>
      <source>{text} is no time</source>
      <translation>{text} ist keine Zeit</translation>
    </message>
    <message>
      <source>{text} is no weight</source>
      <translation>{text} ist kein Gewicht</translation>
    </message>
    <message>
      <source>{text} sets cannot be made</source>
      <translation>{text} Sätze gehen nicht</translation>
    </message>
    <message>
      <source>{text}. Supervisor {by}: {why}.</source>
      <translation>{text}. Aufsicht {by}: {why}.</translation>
    </message>
    <message>
      <source>{thing} is retired</source>
      <translation>{thing} ist außer Gebrauch</translation>
    </message>
    <message>
      <source>{thing} is retired: bring it back first, or name another</source>
      <translation>{thing} ist außer Gebrauch: hol es erst zurück, oder nenne etwas anderes</translation>
    </message>
    <message>
      <source>{thing} is still in use: {use}</source>
      <translation>{thing} wird noch gebraucht: {use}</translation>
    </message>
    <message>
      <source>{thing}, page {page} of {pages}</source>
      <translation>{thing}, Seite {page} von {pages}</translation>
    </message>
    <message>
      <source>{title} · page {page} of {count}</source>
      <translation>{title} · Seite {page} von {count}</translation>
    </message>
    <message>
      <source>{title} · {n} and more</source>
      <translation>{title} · {n} und mehr</translation>
    </message>
    <message>
      <source>{title} · {n} more</source>
      <translation>{title} · {n} weitere</translation>
    </message>
    <message>
      <source>{title}: {n} more</source>
      <translation>{title}: noch {n}</translation>
    </message>
    <message>
      <source>{told}, bit {bit}</source>
      <translation>{told}, Fräser {bit}</translation>
    </message>
    <message>
      <source>{told}, lot {lot}</source>
      <translation>{told}, Charge {lot}</translation>
    </message>
    <message>
      <source>{typed} is no diameter</source>
      <translation>{typed} ist kein Durchmesser</translation>
    </message>
    <message>
      <source>{typed} is no reading</source>
      <translation>{typed} ist keine Messung</translation>
    </message>
    <message>
      <source>{t} mm</source>
      <translation>{t} mm</translation>
    </message>
    <message>
      <source>{unit}, without wrap</source>
      <translation>{unit}, ohne Polster</translation>
    </message>
    <message>
      <source>{use} used a day · {days} days until more is there · {service} % of uses</source>
      <translation>{use} am Tag gebraucht · {days} Tage, bis mehr da ist · {service} % der Entnahmen</translation>
    </message>
    <message>
      <source>{use} used a day · {few} to {many} days until more is there · {service} % of uses</source>
      <translation>{use} am Tag gebraucht · {few} bis {many} Tage, bis mehr da ist · {service} % der Entnahmen</translation>
    </message>
    <message>
      <source>{value}</source>
      <translation>{value}</translation>
    </message>
    <message>
      <source>{value} is not a record</source>
      <translation>{value} ist kein Datensatz</translation>
    </message>
    <message>
      <source>{wanted} wanted, {n} there, {coming} coming</source>
      <translation>{wanted} gewünscht, {n} da, {coming} kommen</translation>
    </message>
    <message>
      <source>{weekday} {day}</source>
      <translation>{weekday} {day}</translation>
    </message>
    <message>
      <source>{weekday} {day} {at}</source>
      <translation>{weekday} {day} {at}</translation>
    </message>
    <message>
      <source>{what}</source>
      <translation>{what}</translation>
    </message>
    <message>
      <source>{what} is changed</source>
      <translation>{what} ist geändert</translation>
    </message>
    <message>
      <source>{what} is new</source>
      <translation>{what} ist neu</translation>
    </message>
    <message>
      <source>{what} {id}, new</source>
      <translation>{what} {id}, neu</translation>
    </message>
    <message>
      <source>{what} · {due}</source>
      <translation>{what} · {due}</translation>
    </message>
    <message>
      <source>{what}, and {n} more</source>
      <translation>{what}, und {n} weitere</translation>
    </message>
    <message>
      <source>{what}, {n} %</source>
      <translation>{what}, {n} %</translation>
    </message>
    <message>
      <source>{what}. The office shows it, step by step.</source>
      <translation>{what}. Das Büro zeigt es Schritt für Schritt.</translation>
    </message>
    <message>
      <source>{what}. {do}</source>
      <translation>{what}. {do}</translation>
    </message>
    <message>
      <source>{what}. {next}</source>
      <translation>{what}. {next}</translation>
    </message>
    <message>
      <source>{what}: a file was damaged. Count what lies there, then go on</source>
      <translation>{what}: Eine Datei war beschädigt. Zähl, was da liegt, dann geht es weiter</translation>
    </message>
    <message>
      <source>{what}: none by the book</source>
      <translation>{what}: laut Buch keine</translation>
    </message>
    <message>
      <source>{what}: {field}, page {page} of {pages}</source>
      <translation>{what}: {field}, Seite {page} von {pages}</translation>
    </message>
    <message>
      <source>{what}: {how}</source>
      <translation>{what}: {how}</translation>
    </message>
    <message>
      <source>{when}</source>
      <translation>{when}</translation>
    </message>
    <message>
      <source>{where} {left} {left|stays|stay} here.</source>
      <translation>{where} {left} {left|bleibt|bleiben} hier.</translation>
    </message>
    <message>
      <source>{where}, due {at}</source>
      <translation>{where}, fällig {at}</translation>
    </message>
    <message>
      <source>{why}</source>
      <translation>{why}</translation>
    </message>
    <message>
      <source>{why} (as of {at})</source>
      <translation>{why} (Stand {at})</translation>
    </message>
    <message>
      <source>{why} (as of {time})</source>
      <translation>{why} (Stand {time})</translation>
    </message>
    <message>
      <source>{why}. Measure it again.</source>
      <translation>{why}. Miss noch einmal.</translation>
    </message>
    <message>
      <source>{why}. Set it, or leave it.</source>
      <translation>{why}. Setzen oder lassen.</translation>
    </message>
    <message>
      <source>{why}: compared with its master before the next sheet</source>
      <translation>{why}: vor der nächsten Platte mit dem Muster verglichen</translation>
    </message>
    <message>
      <source>{why}: {n} {n|piece|pieces} of worker {by} not counted</source>
      <translation>{why}: {n} {n|Teil|Teile} von Nr. {by} nicht gezählt</translation>
    </message>
    <message>
      <source>{why}; {now}. Scan its traveller.</source>
      <translation>{why}; {now}. Laufkarte scannen.</translation>
    </message>
    <message>
      <source>{words} · {k|sheet|sheets} {sheets} · {n} {n|part|parts}</source>
      <translation>{words} · {k|Platte|Platten} {sheets} · {n} {n|Teil|Teile}</translation>
    </message>
    <message>
      <source>{words} · {left} of {sheets} {sheets|sheet|sheets} · {material}</source>
      <translation>{words} · {left} von {sheets} {sheets|Platte|Platten} · {material}</translation>
    </message>
    <message>
      <source>{words} · {tabs} {tabs|tab|tabs}</source>
      <translation>{words} · {tabs} {tabs|Steg|Stege}</translation>
    </message>
    <message>
      <source>{words} · ≈ batch assumed</source>
      <translation>{words} · ≈ Los angenommen</translation>
    </message>
    <message>
      <source>{words}, and {n} {n|part|parts} more</source>
      <translation>{words}, und {n} {n|Teil|Teile} mehr</translation>
    </message>
    <message>
      <source>{words}, no. {bit}</source>
      <translation>{words}, Nr. {bit}</translation>
    </message>
    <message>
      <source>{words}: {n} not shared</source>
      <translation>{words}: {n} nicht geteilt</translation>
    </message>
    <message>
      <source>{word} is not known; it is left out.</source>
      <translation>{word} ist nicht bekannt; es bleibt weg.</translation>
    </message>
    <message>
      <source>{word} stands twice; the last one is used.</source>
      <translation>{word} steht zweimal; das letzte gilt.</translation>
    </message>
    <message>
      <source>{worker} at {station}</source>
      <translation>{worker} an {station}</translation>
    </message>
    <message>
      <source>{work}: {run}</source>
      <translation>{work}: {run}</translation>
    </message>
    <message>
      <source>{wrong}: have the office move it</source>
      <translation>{wrong}: das Büro soll ihn versetzen</translation>
    </message>
    <message>
      <source>{wrong}: {size} mm needed</source>
      <translation>{wrong}: {size} mm nötig</translation>
    </message>
    <message>
      <source>{zone} of the sheet</source>
      <translation>{zone} auf der Platte</translation>
    </message>
    <message>
      <source>± {s} s</source>
      <translation>± {s} s</translation>
    </message>
    <message>
      <source>× {pace}</source>
      <translation>× {pace}</translation>
    </message>
    <message>
      <source>—</source>
      <translation>—</translation>
    </message>
    <message>
      <source>“Sheet spoiled” again when it is complete.</source>
      <translation>„Platte ist Ausschuss“ noch einmal, wenn es vollständig ist.</translation>
    </message>
    <message>
      <source>“{first}” does not hold: {why}, worker {by}</source>
      <translation>„{first}“ gilt nicht: {why}, Mitarbeiter {by}</translation>
    </message>
    <message>
      <source>“{how}” is done one by one</source>
      <translation>„{how}“ geht nur einzeln</translation>
    </message>
    <message>
      <source>“{read}” first, then approve it.</source>
      <translation>Zuerst „{read}“, dann freigeben.</translation>
    </message>
    <message>
      <source>“{words}” does nothing here now</source>
      <translation>„{words}“ bewirkt hier jetzt nichts</translation>
    </message>
    <message>
      <source>“{words}” is a card of {area}</source>
      <translation>„{words}“ ist eine Karte für {area}</translation>
    </message>
    <message>
      <source>“{words}”: nothing to do now</source>
      <translation>„{words}“: jetzt nichts zu tun</translation>
    </message>
    <message>
      <source>≈ {weight}</source>
      <translation>≈ {weight}</translation>
    </message>
    <message>
      <source>▲ holding up</source>
      <translation>▲ hält auf</translation>
    </message>
  </context>
</TS>
