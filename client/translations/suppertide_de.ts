<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
<context>
    <name>ClashPanel</name>
    <message>
        <source>%1 changed this, too: %2</source>
        <translation>Auch %1 hat das geändert: %2</translation>
    </message>
    <message>
        <source>Somebody changed this, too: %1</source>
        <translation>Auch jemand anders hat das geändert: %1</translation>
    </message>
    <message>
        <source>Yours</source>
        <translation>Ihre Fassung</translation>
    </message>
    <message>
        <source>Keep yours</source>
        <translation>Ihre behalten</translation>
    </message>
    <message>
        <source>The other one</source>
        <translation>Die andere</translation>
    </message>
    <message>
        <source>Take this one</source>
        <translation>Diese nehmen</translation>
    </message>
    <message>
        <source>What cannot all be had</source>
        <translation>Was nicht alles zugleich geht</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>What would help</source>
        <translation>Was helfen würde</translation>
    </message>
    <message>
        <source>What moves</source>
        <translation>Was sich verschiebt</translation>
    </message>
    <message>
        <source>Applying…</source>
        <translation>Wird angewendet …</translation>
    </message>
    <message>
        <source>Do it</source>
        <translation>So machen</translation>
    </message>
    <message>
        <source>Do it, for everybody</source>
        <translation>So machen, für alle</translation>
    </message>
    <message>
        <source>Look again</source>
        <translation>Noch einmal suchen</translation>
    </message>
</context>
<context>
    <name>ClashRow</name>
    <message>
        <source>Leave out any one of them and the others can be had.</source>
        <translation>Lassen Sie irgendeins davon weg, und die anderen gehen.</translation>
    </message>
</context>
<context>
    <name>ClashVersion</name>
    <message>
        <source>(nothing)</source>
        <translation>(nichts)</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>ConnectionPart</name>
    <message numerus="yes">
        <source>%n things done here wait on this device. They are sent by themselves, in order, as soon as the server answers.</source>
        <translation>
            <numerusform>%n Eintrag von hier wartet auf diesem Gerät. Er wird von selbst gesendet, sobald der Server antwortet.</numerusform>
            <numerusform>%n Einträge von hier warten auf diesem Gerät. Sie werden von selbst und der Reihe nach gesendet, sobald der Server antwortet.</numerusform>
        </translation>
    </message>
    <message>
        <source>Everything done here has reached the server.</source>
        <translation>Alles, was hier getan wurde, ist beim Server angekommen.</translation>
    </message>
    <message>
        <source>The server did not take these. Nothing of them is lost: try again, or let go of them.</source>
        <translation>Das hat der Server nicht angenommen. Nichts davon ist verloren: Versuchen Sie es noch einmal, oder lassen Sie es fallen.</translation>
    </message>
    <message>
        <source>Somebody else changed the same thing meanwhile. Theirs holds for now.</source>
        <translation>Jemand anders hat inzwischen dasselbe geändert. Vorerst gilt dessen Fassung.</translation>
    </message>
    <message>
        <source>Use mine after all</source>
        <translation>Doch meine nehmen</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Noch einmal versuchen</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Keep theirs</source>
        <translation>Deren behalten</translation>
    </message>
    <message>
        <source>Let go</source>
        <translation>Fallen lassen</translation>
    </message>
    <message>
        <source>Name of the household</source>
        <translation>Name des Haushalts</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Übernehmen</translation>
    </message>
    <message>
        <source>Keep this name</source>
        <translation>Diesen Namen übernehmen</translation>
    </message>
</context>
<context>
    <name>CooksCard</name>
    <message>
        <source>Cooks</source>
        <translation>Wer kocht</translation>
    </message>
    <message>
        <source>%1 – %2</source>
        <translation>%1 – %2</translation>
    </message>
</context>
<context>
    <name>CourseCard</name>
    <message>
        <source>%1, served at %2</source>
        <translation>%1, serviert um %2</translation>
    </message>
    <message>
        <source>Course</source>
        <translation>Gang</translation>
    </message>
    <message>
        <source>Served at</source>
        <translation>Serviert um</translation>
    </message>
    <message>
        <source>No dish yet. Add one from your recipes.</source>
        <translation>Noch kein Gericht. Nehmen Sie eins aus Ihren Rezepten.</translation>
    </message>
    <message>
        <source>No dish yet.</source>
        <translation>Noch kein Gericht.</translation>
    </message>
    <message>
        <source>Enough</source>
        <translation>Genug</translation>
    </message>
    <message>
        <source>Add a dish</source>
        <translation>Gericht hinzufügen</translation>
    </message>
    <message>
        <source>Add %1 to %2</source>
        <translation>%1 zu %2 hinzufügen</translation>
    </message>
    <message>
        <source>There are no recipes yet: write one on the screen “Kitchen” first.</source>
        <translation>Es gibt noch keine Rezepte: Schreiben Sie zuerst eins unter „Küche“.</translation>
    </message>
</context>
<context>
    <name>CourseLine</name>
    <message>
        <source>%1 served at %2</source>
        <translation>%1 wird um %2 serviert</translation>
    </message>
    <message>
        <source>%1  %2</source>
        <translation>%1  %2</translation>
    </message>
</context>
<context>
    <name>DevicesPart</name>
    <message>
        <source>Devices</source>
        <translation>Geräte</translation>
    </message>
    <message>
        <source>The devices are listed here when the connection is live.</source>
        <translation>Die Geräte stehen hier, sobald die Verbindung steht.</translation>
    </message>
    <message>
        <source>%1 (this one)</source>
        <translation>%1 (dieses hier)</translation>
    </message>
    <message>
        <source>%1, taken off</source>
        <translation>%1, abgemeldet</translation>
    </message>
    <message>
        <source>%1, last seen %2</source>
        <translation>%1, zuletzt gesehen %2</translation>
    </message>
    <message>
        <source>Yes, take it off</source>
        <translation>Ja, abmelden</translation>
    </message>
    <message>
        <source>Take off</source>
        <translation>Abmelden</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>DishRow</name>
    <message>
        <source>%1 · %2 · %3</source>
        <translation>%1 · %2 · %3</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Who makes %1, and for how many</source>
        <translation>Wer %1 macht, und für wie viele</translation>
    </message>
    <message>
        <source>Take out %1</source>
        <translation>%1 herausnehmen</translation>
    </message>
    <message>
        <source>Anyone</source>
        <translation>Irgendwer</translation>
    </message>
    <message>
        <source>For how many (0: everybody)</source>
        <translation>Für wie viele (0: alle)</translation>
    </message>
</context>
<context>
    <name>DocumentEditor</name>
    <message>
        <source>Back to the list</source>
        <translation>Zurück zur Liste</translation>
    </message>
    <message>
        <source>New dish</source>
        <translation>Neues Gericht</translation>
    </message>
    <message>
        <source>New kitchen</source>
        <translation>Neue Küche</translation>
    </message>
    <message>
        <source>New starter</source>
        <translation>Neuer Sauerteig</translation>
    </message>
</context>
<context>
    <name>DoughCard</name>
    <message>
        <source>%1, %2. %3</source>
        <translation>%1, %2. %3</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Next: %1</source>
        <translation>Als Nächstes: %1</translation>
    </message>
</context>
<context>
    <name>DoughsPage</name>
    <message>
        <source>Stage</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>Next: %1</source>
        <translation>Als Nächstes: %1</translation>
    </message>
    <message>
        <source>No dough in this event</source>
        <translation>Kein Teig bei diesem Anlass</translation>
    </message>
    <message>
        <source>No doughs yet</source>
        <translation>Noch keine Teige</translation>
    </message>
    <message>
        <source>A dish whose recipe has a bread formula appears here with its rise, hour by hour.</source>
        <translation>Ein Gericht mit einer Brotformel im Rezept erscheint hier mit seinem Trieb, Stunde um Stunde.</translation>
    </message>
    <message>
        <source>Once the event is planned, each dough is forecast here: when it is ready, how warm it stands, and what comes next.</source>
        <translation>Sobald der Anlass geplant ist, steht hier für jeden Teig die Vorhersage: wann er so weit ist, wie warm er steht, und was als Nächstes kommt.</translation>
    </message>
</context>
<context>
    <name>DraftBar</name>
    <message>
        <source>Checking…</source>
        <translation>Wird geprüft …</translation>
    </message>
    <message>
        <source>To put right first: %1</source>
        <translation>Erst zu berichtigen: %1</translation>
    </message>
    <message>
        <source>Nobody else sees this yet.</source>
        <translation>Noch sieht das niemand sonst.</translation>
    </message>
    <message>
        <source>Make this event</source>
        <translation>Diesen Anlass anlegen</translation>
    </message>
    <message>
        <source>Keep the change</source>
        <translation>Änderung behalten</translation>
    </message>
    <message>
        <source>Put it back</source>
        <translation>Zurücksetzen</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Ändern</translation>
    </message>
    <message>
        <source>Change this event</source>
        <translation>Diesen Anlass ändern</translation>
    </message>
    <message>
        <source>Again a week later</source>
        <translation>Eine Woche später wieder</translation>
    </message>
    <message>
        <source>Copy this event to a week later</source>
        <translation>Diesen Anlass eine Woche später noch einmal anlegen</translation>
    </message>
    <message>
        <source>New event</source>
        <translation>Neuer Anlass</translation>
    </message>
    <message numerus="yes">
        <source>%n things to put right. %1</source>
        <translation>
            <numerusform>%n Stelle zu berichtigen. %1</numerusform>
            <numerusform>%n Stellen zu berichtigen. %1</numerusform>
        </translation>
    </message>
    <message>
        <source>New, not saved yet: only you see it.</source>
        <translation>Neu, noch nicht gespeichert: Nur Sie sehen es.</translation>
    </message>
    <message>
        <source>Changed, not saved yet. It is kept here until you save.</source>
        <translation>Geändert, noch nicht gespeichert. Es bleibt hier, bis Sie speichern.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Zurücknehmen</translation>
    </message>
    <message>
        <source>Undo the last change here</source>
        <translation>Die letzte Änderung hier zurücknehmen</translation>
    </message>
    <message>
        <source>Throw away</source>
        <translation>Wegwerfen</translation>
    </message>
    <message>
        <source>As it was</source>
        <translation>Wie es war</translation>
    </message>
    <message>
        <source>Throw this new one away</source>
        <translation>Dieses Neue wegwerfen</translation>
    </message>
    <message>
        <source>Back to what is saved</source>
        <translation>Zurück zum Gespeicherten</translation>
    </message>
    <message>
        <source>Delete</source>
        <translation>Löschen</translation>
    </message>
    <message>
        <source>Two versions: keep yours over theirs, or take theirs.</source>
        <translation>Zwei Fassungen: Behalten Sie Ihre, oder nehmen Sie die andere.</translation>
    </message>
    <message>
        <source>Keep mine</source>
        <translation>Meine behalten</translation>
    </message>
    <message>
        <source>Take theirs</source>
        <translation>Die andere nehmen</translation>
    </message>
    <message>
        <source>Saved on this device; the others see it as soon as the server has it.</source>
        <translation>Auf diesem Gerät gespeichert; die anderen sehen es, sobald der Server es hat.</translation>
    </message>
</context>
<context>
    <name>EditorCard</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message numerus="yes">
        <source>%n things are wrong</source>
        <translation>
            <numerusform>%n Sache stimmt nicht</numerusform>
            <numerusform>%n Sachen stimmen nicht</numerusform>
        </translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Öffnen</translation>
    </message>
    <message>
        <source>Without a name yet</source>
        <translation>Noch ohne Namen</translation>
    </message>
    <message numerus="yes">
        <source>%n things to put right</source>
        <translation>
            <numerusform>%n Stelle zu berichtigen</numerusform>
            <numerusform>%n Stellen zu berichtigen</numerusform>
        </translation>
    </message>
    <message>
        <source>%1: earlier</source>
        <translation>%1: früher</translation>
    </message>
    <message>
        <source>%1: later</source>
        <translation>%1: später</translation>
    </message>
    <message>
        <source>Take out %1</source>
        <translation>%1 herausnehmen</translation>
    </message>
</context>
<context>
    <name>EntryRow</name>
    <message>
        <source>Take out %1</source>
        <translation>%1 herausnehmen</translation>
    </message>
</context>
<context>
    <name>EventChoice</name>
    <message>
        <source>Event</source>
        <translation>Anlass</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>EventHead</name>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>the long table in the garden</source>
        <translation>die lange Tafel im Garten</translation>
    </message>
    <message>
        <source>A day earlier</source>
        <translation>Einen Tag früher</translation>
    </message>
    <message>
        <source>A day later</source>
        <translation>Einen Tag später</translation>
    </message>
</context>
<context>
    <name>EventHeader</name>
    <message>
        <source>Suppertide</source>
        <translation>Suppertide</translation>
    </message>
    <message>
        <source>Undo: %1</source>
        <translation>Zurücknehmen: %1</translation>
    </message>
    <message>
        <source>Print</source>
        <translation>Drucken</translation>
    </message>
    <message>
        <source>Print the run sheet</source>
        <translation>Ablaufzettel drucken</translation>
    </message>
</context>
<context>
    <name>EventPage</name>
    <message>
        <source>Another course</source>
        <translation>Noch ein Gang</translation>
    </message>
    <message>
        <source>No event yet</source>
        <translation>Noch kein Anlass</translation>
    </message>
    <message>
        <source>An event is one dinner: its courses and when they are served, its dishes, guests and cooks. Make one with the button below.</source>
        <translation>Ein Anlass ist ein Essen: seine Gänge und wann sie serviert werden, seine Gerichte, Gäste und wer kocht. Legen Sie mit dem Knopf unten einen an.</translation>
    </message>
    <message>
        <source>An event is one dinner in one kitchen. Describe your kitchen first, on the screen “Kitchen”; then make an event here.</source>
        <translation>Ein Anlass ist ein Essen in einer Küche. Beschreiben Sie zuerst Ihre Küche unter „Küche“; legen Sie dann hier einen Anlass an.</translation>
    </message>
    <message>
        <source>An event is one dinner: its guests, courses and dishes. As soon as a host makes one, it appears here.</source>
        <translation>Ein Anlass ist ein Essen: seine Gäste, Gänge und Gerichte. Sobald ein Gastgeber einen anlegt, erscheint er hier.</translation>
    </message>
</context>
<context>
    <name>FactRow</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>FetchLine</name>
    <message>
        <source>Now: %1</source>
        <translation>Jetzt: %1</translation>
    </message>
    <message>
        <source>%1  %2</source>
        <translation>%1  %2</translation>
    </message>
    <message>
        <source>%1, for %2</source>
        <translation>%1, für %2</translation>
    </message>
</context>
<context>
    <name>FetchList</name>
    <message>
        <source>Take out of fridge and freezer</source>
        <translation>Aus Kühlschrank und Gefrierfach nehmen</translation>
    </message>
    <message>
        <source>To take out</source>
        <translation>Herauszunehmen</translation>
    </message>
    <message>
        <source>%1: %2, %3, %4</source>
        <translation>%1: %2, %3, %4</translation>
    </message>
    <message>
        <source>%1  %2</source>
        <translation>%1  %2</translation>
    </message>
    <message>
        <source>%1 · %2 · %3</source>
        <translation>%1 · %2 · %3</translation>
    </message>
    <message>
        <source>Nothing to take out</source>
        <translation>Nichts herauszunehmen</translation>
    </message>
    <message>
        <source>What is kept in fridge or freezer and needed warm or thawed stands here, with its time.</source>
        <translation>Was in Kühlschrank oder Gefrierfach liegt und warm oder aufgetaut gebraucht wird, steht hier mit seiner Zeit.</translation>
    </message>
</context>
<context>
    <name>FirstRunPage</name>
    <message>
        <source>Welcome to Suppertide</source>
        <translation>Willkommen bei Suppertide</translation>
    </message>
    <message>
        <source>A dinner with fresh bread, planned backward from serving time</source>
        <translation>Ein Essen mit frischem Brot, vom Servieren aus rückwärts geplant</translation>
    </message>
    <message>
        <source>Suppertide keeps one plan for everybody who cooks. Where does your household live?</source>
        <translation>Suppertide hält einen Plan für alle, die mitkochen. Wo soll Ihr Haushalt zu Hause sein?</translation>
    </message>
    <message>
        <source>Your name</source>
        <translation>Ihr Name</translation>
    </message>
    <message>
        <source>As the others know you</source>
        <translation>So, wie die anderen Sie kennen</translation>
    </message>
    <message>
        <source>On this computer only</source>
        <translation>Nur auf diesem Rechner</translation>
    </message>
    <message>
        <source>Nothing leaves this computer. A sample feast is there to look at; change it or throw it away.</source>
        <translation>Nichts verlässt diesen Rechner. Ein Beispiel-Festessen liegt zum Ansehen bereit; ändern Sie es, oder werfen Sie es weg.</translation>
    </message>
    <message>
        <source>One moment…</source>
        <translation>Einen Moment …</translation>
    </message>
    <message>
        <source>This computer only</source>
        <translation>Nur dieser Rechner</translation>
    </message>
    <message>
        <source>Join a household</source>
        <translation>Einem Haushalt beitreten</translation>
    </message>
    <message>
        <source>A host of the household makes an invitation under Household and tells you its address and code.</source>
        <translation>Wer in dem Haushalt Gastgeber ist, macht unter „Haushalt“ eine Einladung und nennt Ihnen Adresse und Code.</translation>
    </message>
    <message>
        <source>Address</source>
        <translation>Adresse</translation>
    </message>
    <message>
        <source>Invitation code</source>
        <translation>Einladungscode</translation>
    </message>
    <message>
        <source>All of it as one word, with what stands after a dot. The whole line from a camera will do, too.</source>
        <translation>Ganz und als ein Wort, auch das, was nach einem Punkt steht. Auch die ganze Zeile aus einer Kamera geht.</translation>
    </message>
    <message>
        <source>Join</source>
        <translation>Beitreten</translation>
    </message>
    <message>
        <source>Join the household</source>
        <translation>Dem Haushalt beitreten</translation>
    </message>
</context>
<context>
    <name>FormulaEditor</name>
    <message>
        <source>Flour in all</source>
        <translation>Mehl insgesamt</translation>
    </message>
    <message>
        <source>%1 g</source>
        <translation>%1 g</translation>
    </message>
    <message>
        <source>Of it fermented ahead</source>
        <translation>Davon vorab vergoren</translation>
    </message>
    <message>
        <source>%1 g, %2 %</source>
        <translation>%1 g, %2 %</translation>
    </message>
    <message>
        <source>Hydration</source>
        <translation>Wasser auf Mehl</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>Salt</source>
        <translation>Salz</translation>
    </message>
    <message>
        <source>Whole grain</source>
        <translation>Vollkorn</translation>
    </message>
    <message>
        <source>Dough</source>
        <translation>Teig</translation>
    </message>
    <message>
        <source>Grams</source>
        <translation>Gramm</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>%1 in grams</source>
        <translation>%1 in Gramm</translation>
    </message>
    <message>
        <source>Baker&apos;s per cent</source>
        <translation>Bäckerprozent</translation>
    </message>
    <message>
        <source>Something more in the dough</source>
        <translation>Noch etwas im Teig</translation>
    </message>
    <message>
        <source>rye flour</source>
        <translation>Roggenmehl</translation>
    </message>
    <message>
        <source>as</source>
        <translation>als</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
    <message>
        <source>Add it to the dough</source>
        <translation>Zum Teig geben</translation>
    </message>
    <message>
        <source>Pieces</source>
        <translation>Stücke</translation>
    </message>
    <message>
        <source>Dough of one</source>
        <translation>Teig je Stück</translation>
    </message>
    <message>
        <source>Wanted warmth of the dough</source>
        <translation>Gewünschte Teigtemperatur</translation>
    </message>
    <message>
        <source>Kind of dough</source>
        <translation>Art des Teigs</translation>
    </message>
    <message>
        <source>To be weighed: %1</source>
        <translation>Abzuwiegen: %1</translation>
    </message>
</context>
<context>
    <name>FormulaFigure</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>GuestRow</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1 – %2</source>
        <translation>%1 – %2</translation>
    </message>
    <message>
        <source>%1 (%2 % of a portion)</source>
        <translation>%1 (%2 % einer Portion)</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Needs</source>
        <translation>Bedürfnisse</translation>
    </message>
    <message>
        <source>Needs of %1</source>
        <translation>Bedürfnisse von %1</translation>
    </message>
    <message>
        <source>Take out %1</source>
        <translation>%1 herausnehmen</translation>
    </message>
</context>
<context>
    <name>GuestsCard</name>
    <message>
        <source>Write a name and press Add. Needs such as “gluten” or “vegan” come after it.</source>
        <translation>Schreiben Sie einen Namen, und drücken Sie „Hinzufügen“. Bedürfnisse wie „Gluten“ oder „vegan“ kommen danach.</translation>
    </message>
    <message>
        <source>Guests and their needs are checked against every dish.</source>
        <translation>Gäste und ihre Bedürfnisse werden mit jedem Gericht verglichen.</translation>
    </message>
    <message>
        <source>Another guest</source>
        <translation>Noch ein Gast</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
</context>
<context>
    <name>HandOverRow</name>
    <message>
        <source>Who takes it?</source>
        <translation>Wer übernimmt es?</translation>
    </message>
    <message>
        <source>%1 – %2</source>
        <translation>%1 – %2</translation>
    </message>
    <message>
        <source>Hand over to %1, now: %2</source>
        <translation>An %1 übergeben, jetzt: %2</translation>
    </message>
    <message>
        <source>Keep it</source>
        <translation>Behalten</translation>
    </message>
</context>
<context>
    <name>HeatChart</name>
    <message>
        <source>%1 at %2: %3</source>
        <translation>%1 um %2: %3</translation>
    </message>
    <message>
        <source>Left and right move the time, page keys go from change to change</source>
        <translation>Links und rechts verschieben die Zeit, die Bildtasten gehen von Änderung zu Änderung</translation>
    </message>
</context>
<context>
    <name>HeatReadings</name>
    <message>
        <source>After</source>
        <translation>Nach</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>Add a reading</source>
        <translation>Messung hinzufügen</translation>
    </message>
</context>
<context>
    <name>HouseholdRulesPart</name>
    <message>
        <source>For the whole household</source>
        <translation>Für den ganzen Haushalt</translation>
    </message>
    <message>
        <source>Time zone</source>
        <translation>Zeitzone</translation>
    </message>
    <message>
        <source>Europe/Lisbon</source>
        <translation>Europe/Berlin</translation>
    </message>
    <message>
        <source>Not known. Write it as continent/city.</source>
        <translation>Unbekannt. Bitte als Kontinent/Stadt schreiben, auf Englisch.</translation>
    </message>
    <message>
        <source>All times of day are told in it.</source>
        <translation>Alle Uhrzeiten gelten in dieser Zone.</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Übernehmen</translation>
    </message>
    <message>
        <source>Keep this time zone</source>
        <translation>Diese Zeitzone übernehmen</translation>
    </message>
    <message>
        <source>Temperatures</source>
        <translation>Temperaturen</translation>
    </message>
    <message>
        <source>Measures</source>
        <translation>Maße</translation>
    </message>
    <message>
        <source>Grams and litres</source>
        <translation>Gramm und Liter</translation>
    </message>
    <message>
        <source>Cups and ounces</source>
        <translation>Cups und Unzen</translation>
    </message>
    <message>
        <source>Food-safety rules</source>
        <translation>Regeln der Lebensmittelsicherheit</translation>
    </message>
    <message>
        <source>For home cooks</source>
        <translation>Für zu Hause</translation>
    </message>
    <message>
        <source>For food service</source>
        <translation>Für die Gastronomie</translation>
    </message>
    <message>
        <source>United Kingdom</source>
        <translation>Vereinigtes Königreich</translation>
    </message>
    <message>
        <source>They hold from the next plan on. Where your local rules ask for more, those hold.</source>
        <translation>Sie gelten ab dem nächsten Plan. Verlangen die Regeln an Ihrem Ort mehr, gelten diese.</translation>
    </message>
    <message>
        <source>This device reads in its own; what you choose here holds for the others.</source>
        <translation>Dieses Gerät liest in eigenen Einheiten; was Sie hier wählen, gilt für die anderen.</translation>
    </message>
</context>
<context>
    <name>IngredientEditor</name>
    <message>
        <source>Name, as on a shopping list</source>
        <translation>Name, wie auf einem Einkaufszettel</translation>
    </message>
    <message>
        <source>Amount</source>
        <translation>Menge</translation>
    </message>
    <message>
        <source>Measured in</source>
        <translation>Gemessen in</translation>
    </message>
    <message>
        <source>How</source>
        <translation>Wie</translation>
    </message>
    <message>
        <source>chopped</source>
        <translation>gehackt</translation>
    </message>
    <message>
        <source>Allergens and animal origin it holds, with commas between</source>
        <translation>Enthaltene Allergene und Tierisches, mit Kommas dazwischen</translation>
    </message>
    <message>
        <source>milk, wheat</source>
        <translation>Milch, Weizen</translation>
    </message>
    <message>
        <source>That is all it holds: the label was read</source>
        <translation>Mehr ist nicht drin: Das Etikett wurde gelesen</translation>
    </message>
    <message>
        <source>Kept before use in</source>
        <translation>Bis zum Gebrauch aufbewahrt in</translation>
    </message>
</context>
<context>
    <name>IngredientsEditor</name>
    <message>
        <source>More ingredients, one a line</source>
        <translation>Weitere Zutaten, eine je Zeile</translation>
    </message>
    <message>
        <source>One a line, typed or pasted</source>
        <translation>Eine je Zeile, getippt oder eingefügt</translation>
    </message>
    <message>
        <source>250 g butter, soft
3 eggs
1 tsp salt</source>
        <translation>250 g Butter, weich
3 Eier
1 TL Salz</translation>
    </message>
    <message>
        <source>%1 %2. %3</source>
        <translation>%1 %2. %3</translation>
    </message>
    <message>
        <source>%1 (holds %2)</source>
        <translation>%1 (enthält %2)</translation>
    </message>
    <message numerus="yes">
        <source>Add %n lines, as they are read here</source>
        <translation>
            <numerusform>%n Zeile hinzufügen, wie sie hier gelesen ist</numerusform>
            <numerusform>%n Zeilen hinzufügen, wie sie hier gelesen sind</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Add %n lines</source>
        <translation>
            <numerusform>%n Zeile hinzufügen</numerusform>
            <numerusform>%n Zeilen hinzufügen</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>InvitationPart</name>
    <message>
        <source>Invite</source>
        <translation>Einladen</translation>
    </message>
    <message>
        <source>The other device opens Suppertide, chooses “Join a household” and types this, or reads the picture with its camera. A code works once.</source>
        <translation>Am anderen Gerät Suppertide öffnen, „Einem Haushalt beitreten“ wählen und dies eintippen oder das Bild mit der Kamera lesen. Ein Code gilt einmal.</translation>
    </message>
    <message>
        <source>As</source>
        <translation>Als</translation>
    </message>
    <message>
        <source>One moment…</source>
        <translation>Einen Moment …</translation>
    </message>
    <message>
        <source>Make an invitation</source>
        <translation>Einladung machen</translation>
    </message>
    <message>
        <source>Picture of the invitation, for a camera</source>
        <translation>Bild der Einladung, für eine Kamera</translation>
    </message>
    <message>
        <source>Address</source>
        <translation>Adresse</translation>
    </message>
    <message>
        <source>Address: %1</source>
        <translation>Adresse: %1</translation>
    </message>
    <message>
        <source>Code</source>
        <translation>Code</translation>
    </message>
    <message>
        <source>Code: %1</source>
        <translation>Code: %1</translation>
    </message>
    <message>
        <source>Good once, until %1.</source>
        <translation>Gilt einmal, bis %1.</translation>
    </message>
    <message>
        <source>Put away</source>
        <translation>Wegräumen</translation>
    </message>
    <message>
        <source>Phones and other computers on this network may join and look in, as long as this window is open. What they send is encrypted.</source>
        <translation>Telefone und andere Computer in diesem Netz können beitreten und hineinsehen, solange dieses Fenster offen ist. Was sie senden, ist verschlüsselt.</translation>
    </message>
    <message>
        <source>Only this computer reaches this household. Let others in, and phones and other computers on this network can join with an invitation, as long as this window is open.</source>
        <translation>Nur dieser Computer erreicht diesen Haushalt. Lassen Sie andere herein, dann können Telefone und andere Computer in diesem Netz mit einer Einladung beitreten, solange dieses Fenster offen ist.</translation>
    </message>
    <message>
        <source>This computer only</source>
        <translation>Nur dieser Rechner</translation>
    </message>
    <message>
        <source>Let others in</source>
        <translation>Andere hereinlassen</translation>
    </message>
    <message>
        <source>This computer is on no network now.</source>
        <translation>Dieser Computer ist gerade in keinem Netz.</translation>
    </message>
    <message>
        <source>An invitation made now is good for another person on this computer.</source>
        <translation>Eine Einladung gilt jetzt für eine weitere Person an diesem Computer.</translation>
    </message>
</context>
<context>
    <name>KitchenEditor</name>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Our kitchen</source>
        <translation>Unsere Küche</translation>
    </message>
    <message>
        <source>Burners in use at once</source>
        <translation>Herdplatten zugleich in Gebrauch</translation>
    </message>
    <message>
        <source>Ovens</source>
        <translation>Öfen</translation>
    </message>
    <message>
        <source>Add an oven</source>
        <translation>Ofen hinzufügen</translation>
    </message>
    <message>
        <source>Places where food stands</source>
        <translation>Plätze, an denen etwas steht</translation>
    </message>
    <message>
        <source>Add a place</source>
        <translation>Platz hinzufügen</translation>
    </message>
    <message>
        <source>Things there are few of</source>
        <translation>Dinge, von denen es wenige gibt</translation>
    </message>
    <message>
        <source>Mixers, large pots, pans: a plan never uses more of them at once than there are.</source>
        <translation>Rührmaschinen, große Töpfe, Pfannen: Ein Plan braucht nie mehr davon zugleich, als es gibt.</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>How many</source>
        <translation>Wie viele</translation>
    </message>
    <message>
        <source>Add a thing</source>
        <translation>Ding hinzufügen</translation>
    </message>
</context>
<context>
    <name>KitchenList</name>
    <message>
        <source>Recipes</source>
        <translation>Rezepte</translation>
    </message>
    <message>
        <source>Kitchens</source>
        <translation>Küchen</translation>
    </message>
    <message>
        <source>Starters</source>
        <translation>Sauerteige</translation>
    </message>
    <message>
        <source>Search</source>
        <translation>Suchen</translation>
    </message>
    <message>
        <source>New dish</source>
        <translation>Neues Gericht</translation>
    </message>
    <message>
        <source>New kitchen</source>
        <translation>Neue Küche</translation>
    </message>
    <message>
        <source>New starter</source>
        <translation>Neuer Sauerteig</translation>
    </message>
    <message>
        <source>“%1” was deleted.</source>
        <translation>„%1“ wurde gelöscht.</translation>
    </message>
    <message>
        <source>Have it back</source>
        <translation>Zurückholen</translation>
    </message>
    <message>
        <source>%1, %2, not saved yet</source>
        <translation>%1, %2, noch nicht gespeichert</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>not saved yet · %1</source>
        <translation>noch nicht gespeichert · %1</translation>
    </message>
    <message>
        <source>Nothing of that name</source>
        <translation>Nichts mit diesem Namen</translation>
    </message>
    <message>
        <source>No recipes yet</source>
        <translation>Noch keine Rezepte</translation>
    </message>
    <message>
        <source>No kitchen yet</source>
        <translation>Noch keine Küche</translation>
    </message>
    <message>
        <source>No starter yet</source>
        <translation>Noch kein Sauerteig</translation>
    </message>
    <message>
        <source>A dish needs a name and its steps; amounts and everything else can come later.</source>
        <translation>Ein Gericht braucht einen Namen und seine Schritte; Mengen und alles andere können später kommen.</translation>
    </message>
    <message>
        <source>A plan needs to know your ovens, burners and where things stand.</source>
        <translation>Ein Plan muss Ihre Öfen und Herdplatten kennen, und wo etwas stehen kann.</translation>
    </message>
    <message>
        <source>Add the starter in your jar, and plans know when to feed it.</source>
        <translation>Tragen Sie den Sauerteig aus Ihrem Glas ein, und Pläne wissen, wann er zu füttern ist.</translation>
    </message>
</context>
<context>
    <name>KitchenPage</name>
    <message>
        <source>Choose a dish</source>
        <translation>Wählen Sie ein Gericht</translation>
    </message>
    <message>
        <source>Choose a kitchen</source>
        <translation>Wählen Sie eine Küche</translation>
    </message>
    <message>
        <source>Choose a starter</source>
        <translation>Wählen Sie einen Sauerteig</translation>
    </message>
    <message>
        <source>What you change is kept here as you go, and the others see it once you save.</source>
        <translation>Was Sie ändern, bleibt hier liegen; die anderen sehen es, sobald Sie speichern.</translation>
    </message>
    <message>
        <source>Hosts change what is here; you can read all of it.</source>
        <translation>Das hier ändern Gastgeber; lesen können Sie alles.</translation>
    </message>
</context>
<context>
    <name>LeavePart</name>
    <message>
        <source>Leave this household</source>
        <translation>Diesen Haushalt verlassen</translation>
    </message>
    <message>
        <source>This household lives on this computer alone. Its file stays at %1, but this window can&apos;t open it again.</source>
        <translation>Dieser Haushalt lebt nur auf diesem Rechner. Seine Datei bleibt unter %1, aber dieses Fenster kann sie nicht wieder öffnen.</translation>
    </message>
    <message>
        <source>This device forgets the household. To come back it needs a new invitation.</source>
        <translation>Dieses Gerät vergisst den Haushalt. Um zurückzukommen, braucht es eine neue Einladung.</translation>
    </message>
    <message numerus="yes">
        <source>%n things done here have not reached the server. They are lost if you leave now.</source>
        <translation>
            <numerusform>%n Eintrag von hier hat den Server noch nicht erreicht. Er ist verloren, wenn Sie jetzt gehen.</numerusform>
            <numerusform>%n Einträge von hier haben den Server noch nicht erreicht. Sie sind verloren, wenn Sie jetzt gehen.</numerusform>
        </translation>
    </message>
    <message>
        <source>Yes, leave</source>
        <translation>Ja, verlassen</translation>
    </message>
    <message>
        <source>Leave…</source>
        <translation>Verlassen …</translation>
    </message>
    <message>
        <source>Yes, leave this household</source>
        <translation>Ja, diesen Haushalt verlassen</translation>
    </message>
    <message>
        <source>Stay</source>
        <translation>Bleiben</translation>
    </message>
</context>
<context>
    <name>LevainEditor</name>
    <message>
        <source>Raised by a starter</source>
        <translation>Mit Sauerteig getrieben</translation>
    </message>
    <message>
        <source>Raised by a starter (the household has none yet)</source>
        <translation>Mit Sauerteig getrieben (der Haushalt hat noch keinen)</translation>
    </message>
    <message>
        <source>Starter</source>
        <translation>Sauerteig</translation>
    </message>
    <message>
        <source>Ripe levain in 100 of dough</source>
        <translation>Reifer Vorteig auf 100 Teig</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>Levain, water on 100 of flour</source>
        <translation>Vorteig, Wasser auf 100 Mehl</translation>
    </message>
    <message>
        <source>Levain, whole grain in its flour</source>
        <translation>Vorteig, Vollkorn in seinem Mehl</translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>%1 – Suppertide</source>
        <translation>%1 – Suppertide</translation>
    </message>
    <message>
        <source>Suppertide</source>
        <translation>Suppertide</translation>
    </message>
    <message>
        <source>Timeline</source>
        <translation>Zeitplan</translation>
    </message>
    <message>
        <source>Household</source>
        <translation>Haushalt</translation>
    </message>
    <message>
        <source>%1: the server did not take it. It is kept under Household.</source>
        <translation>%1: Der Server hat es nicht angenommen. Es liegt unter „Haushalt“.</translation>
    </message>
    <message>
        <source>Event</source>
        <translation>Anlass</translation>
    </message>
    <message>
        <source>Ovens</source>
        <translation>Öfen</translation>
    </message>
    <message>
        <source>Doughs</source>
        <translation>Teige</translation>
    </message>
    <message>
        <source>My tasks</source>
        <translation>Aufgaben</translation>
    </message>
    <message>
        <source>Shopping</source>
        <translation>Einkauf</translation>
    </message>
    <message>
        <source>Kitchen</source>
        <translation>Küche</translation>
    </message>
</context>
<context>
    <name>MemberEditor</name>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>A name is needed.</source>
        <translation>Ein Name wird gebraucht.</translation>
    </message>
    <message>
        <source>Role</source>
        <translation>Rolle</translation>
    </message>
    <message>
        <source>Another host can change your role.</source>
        <translation>Ihre Rolle kann jemand anders ändern, der Gastgeber ist.</translation>
    </message>
    <message>
        <source>Up from</source>
        <translation>Wach ab</translation>
    </message>
    <message>
        <source>A plan asks for nothing before.</source>
        <translation>Davor verlangt ein Plan nichts.</translation>
    </message>
    <message>
        <source>Up until</source>
        <translation>Wach bis</translation>
    </message>
    <message>
        <source>A time before “up from” means after midnight.</source>
        <translation>Eine Zeit vor „Wach ab“ heißt: nach Mitternacht.</translation>
    </message>
    <message>
        <source>Likes to work from</source>
        <translation>Arbeitet gern ab</translation>
    </message>
    <message>
        <source>Work outside these hours is avoided where it can be.</source>
        <translation>Arbeit außerhalb dieser Stunden wird vermieden, wo es geht.</translation>
    </message>
    <message>
        <source>Likes to work until</source>
        <translation>Arbeitet gern bis</translation>
    </message>
    <message>
        <source>Part of the work</source>
        <translation>Anteil an der Arbeit</translation>
    </message>
    <message>
        <source>Against the others&apos; numbers: 2 takes twice as much as 1.</source>
        <translation>Gegen die Zahlen der anderen: 2 übernimmt doppelt so viel wie 1.</translation>
    </message>
    <message>
        <source>Special skills</source>
        <translation>Besonderes Können</translation>
    </message>
    <message>
        <source>shaping, carving</source>
        <translation>Formen, Tranchieren</translation>
    </message>
    <message>
        <source>Words that recipe steps ask for, with commas between.</source>
        <translation>Wörter, nach denen Rezeptschritte fragen, mit Kommas dazwischen.</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Take out of the household</source>
        <translation>Aus dem Haushalt nehmen</translation>
    </message>
    <message>
        <source>Take %1 out of the household</source>
        <translation>%1 aus dem Haushalt nehmen</translation>
    </message>
    <message>
        <source>Reminders make no sound from</source>
        <translation>Erinnerungen ohne Ton ab</translation>
    </message>
    <message>
        <source>They are shown all the same.</source>
        <translation>Gezeigt werden sie trotzdem.</translation>
    </message>
    <message>
        <source>Reminders make no sound until</source>
        <translation>Erinnerungen ohne Ton bis</translation>
    </message>
    <message>
        <source>Told ahead of a step</source>
        <translation>Vor einem Schritt erinnern</translation>
    </message>
    <message>
        <source>min</source>
        <translation>Min.</translation>
    </message>
    <message>
        <source>Only when it is due.</source>
        <translation>Erst, wenn er dran ist.</translation>
    </message>
</context>
<context>
    <name>MoveRow</name>
    <message>
        <source>%1, %2: from %3 to %4. %5. %6</source>
        <translation>%1, %2: von %3 auf %4. %5. %6</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>%1 → %2 (%3)</source>
        <translation>%1 → %2 (%3)</translation>
    </message>
    <message>
        <source>%1 → %2</source>
        <translation>%1 → %2</translation>
    </message>
</context>
<context>
    <name>NeedPicks</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1: %2. Change how strictly</source>
        <translation>%1: %2. Ändern, wie streng</translation>
    </message>
    <message>
        <source>Take out %1</source>
        <translation>%1 herausnehmen</translation>
    </message>
    <message>
        <source>gluten</source>
        <translation>Gluten</translation>
    </message>
    <message>
        <source>milk</source>
        <translation>Milch</translation>
    </message>
    <message>
        <source>egg</source>
        <translation>Ei</translation>
    </message>
    <message>
        <source>tree nuts</source>
        <translation>Nüsse</translation>
    </message>
    <message>
        <source>peanut</source>
        <translation>Erdnuss</translation>
    </message>
    <message>
        <source>fish</source>
        <translation>Fisch</translation>
    </message>
    <message>
        <source>soy</source>
        <translation>Soja</translation>
    </message>
    <message>
        <source>vegetarian</source>
        <translation>vegetarisch</translation>
    </message>
    <message>
        <source>vegan</source>
        <translation>vegan</translation>
    </message>
    <message>
        <source>Something else, in your own words</source>
        <translation>Etwas anderes, in Ihren Worten</translation>
    </message>
    <message>
        <source>beetroot</source>
        <translation>Rote Bete</translation>
    </message>
    <message>
        <source>Portion against an adult&apos;s</source>
        <translation>Portion gegen die eines Erwachsenen</translation>
    </message>
</context>
<context>
    <name>NoteRow</name>
    <message>
        <source>A note for everybody</source>
        <translation>Eine Notiz für alle</translation>
    </message>
    <message>
        <source>Tell</source>
        <translation>Sagen</translation>
    </message>
</context>
<context>
    <name>NumberEntry</name>
    <message>
        <source>%1: less</source>
        <translation>%1: weniger</translation>
    </message>
    <message>
        <source>%1 in %2</source>
        <translation>%1 in %2</translation>
    </message>
    <message>
        <source>Not a number</source>
        <translation>Keine Zahl</translation>
    </message>
    <message>
        <source>%1: more</source>
        <translation>%1: mehr</translation>
    </message>
</context>
<context>
    <name>OvenEditor</name>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Lowest setting</source>
        <translation>Niedrigste Einstellung</translation>
    </message>
    <message>
        <source>Highest setting</source>
        <translation>Höchste Einstellung</translation>
    </message>
    <message>
        <source>The dial&apos;s step</source>
        <translation>Schritt des Reglers</translation>
    </message>
    <message>
        <source>K</source>
        <translation>K</translation>
    </message>
    <message>
        <source>Longer for a stone or heavy pot</source>
        <translation>Länger für Stein oder schweren Topf</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>It has a fan</source>
        <translation>Mit Umluft</translation>
    </message>
    <message>
        <source>Shelf, width</source>
        <translation>Rost, Breite</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Shelf, depth</source>
        <translation>Rost, Tiefe</translation>
    </message>
    <message>
        <source>rack %1</source>
        <translation>Einschub %1</translation>
    </message>
    <message>
        <source>Clear height above rack 1, the lowest</source>
        <translation>Freie Höhe über Einschub 1, dem untersten</translation>
    </message>
    <message>
        <source>Above rack %1</source>
        <translation>Über Einschub %1</translation>
    </message>
    <message>
        <source>Add a rack</source>
        <translation>Einschub hinzufügen</translation>
    </message>
    <message>
        <source>How it heats</source>
        <translation>Wie er heizt</translation>
    </message>
    <message>
        <source>Temperature after switching on: %1</source>
        <translation>Temperatur nach dem Einschalten: %1</translation>
    </message>
    <message>
        <source>Solid: this oven. Dashed: a usual one. Points: readings.</source>
        <translation>Durchgezogen: dieser Ofen. Gestrichelt: ein üblicher. Punkte: Messungen.</translation>
    </message>
    <message>
        <source>While heating, from switching on</source>
        <translation>Beim Aufheizen, ab dem Einschalten</translation>
    </message>
    <message>
        <source>After switching off, door closed</source>
        <translation>Nach dem Ausschalten, Tür zu</translation>
    </message>
    <message>
        <source>After switching off, door ajar</source>
        <translation>Nach dem Ausschalten, Tür angelehnt</translation>
    </message>
</context>
<context>
    <name>OvenFront</name>
    <message>
        <source>Racks, from the top</source>
        <translation>Einschübe, von oben</translation>
    </message>
    <message>
        <source>Rack %1: %2, %3</source>
        <translation>Einschub %1: %2, %3</translation>
    </message>
    <message>
        <source>Rack %1: empty</source>
        <translation>Einschub %1: leer</translation>
    </message>
    <message>
        <source>%1
%2</source>
        <translation>%1
%2</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>leer</translation>
    </message>
</context>
<context>
    <name>OvenHelpCard</name>
    <message>
        <source>What would help?</source>
        <translation>Was würde helfen?</translation>
    </message>
</context>
<context>
    <name>OvenNeedEditor</name>
    <message>
        <source>Temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>How long</source>
        <translation>Wie lange</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>What is baked</source>
        <translation>Was gebacken wird</translation>
    </message>
    <message>
        <source>Pan</source>
        <translation>Form</translation>
    </message>
    <message>
        <source>loaf tin</source>
        <translation>Kastenform</translation>
    </message>
    <message>
        <source>Pan, width with handles</source>
        <translation>Form, Breite mit Griffen</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Pan, depth</source>
        <translation>Form, Tiefe</translation>
    </message>
    <message>
        <source>Pan, height with what stands out</source>
        <translation>Form, Höhe mit dem, was herausragt</translation>
    </message>
    <message>
        <source>How many pans</source>
        <translation>Wie viele Formen</translation>
    </message>
    <message>
        <source>With steam at the beginning</source>
        <translation>Mit Dampf zu Beginn</translation>
    </message>
    <message>
        <source>On a hot stone or in a hot pot</source>
        <translation>Auf heißem Stein oder in heißem Topf</translation>
    </message>
    <message>
        <source>Goes in before the oven is hot</source>
        <translation>Kommt in den Ofen, bevor er heiß ist</translation>
    </message>
    <message>
        <source>Less</source>
        <translation>Weniger</translation>
    </message>
    <message>
        <source>Later temperatures, core, range…</source>
        <translation>Spätere Temperaturen, Kern, Spanne …</translation>
    </message>
    <message>
        <source>Also right from</source>
        <translation>Auch gut ab</translation>
    </message>
    <message>
        <source>Empty: by what is baked</source>
        <translation>Leer: nach dem, was gebacken wird</translation>
    </message>
    <message>
        <source>Also right up to</source>
        <translation>Auch gut bis</translation>
    </message>
    <message>
        <source>If it goes quickly</source>
        <translation>Wenn es schnell geht</translation>
    </message>
    <message>
        <source>If it drags on</source>
        <translation>Wenn es sich zieht</translation>
    </message>
    <message>
        <source>Centre when it goes in</source>
        <translation>Mitte beim Hineinstellen</translation>
    </message>
    <message>
        <source>Centre when it is done</source>
        <translation>Mitte, wenn es fertig ist</translation>
    </message>
    <message>
        <source>Thinnest dimension</source>
        <translation>Dünnste Abmessung</translation>
    </message>
    <message>
        <source>Loads one after the other, at most</source>
        <translation>Ladungen nacheinander, höchstens</translation>
    </message>
    <message>
        <source>Steam until</source>
        <translation>Dampf bis</translation>
    </message>
    <message>
        <source>Under a lid until</source>
        <translation>Unter dem Deckel bis</translation>
    </message>
    <message>
        <source>then %1</source>
        <translation>dann %1</translation>
    </message>
    <message>
        <source>Then at</source>
        <translation>Dann bei</translation>
    </message>
    <message>
        <source>for</source>
        <translation>für</translation>
    </message>
    <message>
        <source>Then at another temperature</source>
        <translation>Dann bei anderer Temperatur</translation>
    </message>
</context>
<context>
    <name>OvenPanel</name>
    <message>
        <source>%1: %2, %3</source>
        <translation>%1: %2, %3</translation>
    </message>
    <message>
        <source>%1  %2</source>
        <translation>%1  %2</translation>
    </message>
</context>
<context>
    <name>OvensPage</name>
    <message>
        <source>Change before</source>
        <translation>Änderung davor</translation>
    </message>
    <message>
        <source>Next change</source>
        <translation>Nächste Änderung</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Jetzt</translation>
    </message>
    <message>
        <source>Put the cursor to now</source>
        <translation>Zeiger auf jetzt setzen</translation>
    </message>
    <message>
        <source>What collided, and how the plan settled it</source>
        <translation>Was zusammenstieß, und wie der Plan es gelöst hat</translation>
    </message>
    <message>
        <source>No oven is used</source>
        <translation>Kein Ofen wird gebraucht</translation>
    </message>
    <message>
        <source>Ovens have nothing to do yet</source>
        <translation>Öfen haben noch nichts zu tun</translation>
    </message>
    <message>
        <source>No dish of this event is baked or roasted. When one is, its oven appears here with its temperature over the day.</source>
        <translation>Kein Gericht dieses Anlasses wird gebacken oder gebraten. Sobald eins dabei ist, erscheint hier sein Ofen mit der Temperatur über den Tag.</translation>
    </message>
    <message>
        <source>Once the event is planned, each oven shows here when it heats, what it is set to, and which dish stands on which rack.</source>
        <translation>Sobald der Anlass geplant ist, zeigt hier jeder Ofen, wann er heizt, worauf er gestellt ist, und welches Gericht auf welchem Einschub steht.</translation>
    </message>
    <message>
        <source>This is how it would be; nothing is changed yet.</source>
        <translation>So wäre es; noch ist nichts geändert.</translation>
    </message>
</context>
<context>
    <name>PeoplePart</name>
    <message>
        <source>People</source>
        <translation>Personen</translation>
    </message>
    <message>
        <source>%1 (you)</source>
        <translation>%1 (Sie)</translation>
    </message>
    <message>
        <source>%1, up %2</source>
        <translation>%1, wach %2</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Ändern</translation>
    </message>
    <message>
        <source>Close %1</source>
        <translation>%1 schließen</translation>
    </message>
    <message>
        <source>Change %1</source>
        <translation>%1 ändern</translation>
    </message>
    <message>
        <source>Somebody without a device</source>
        <translation>Jemand ohne Gerät</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>A cook who is planned for, but does not look here.</source>
        <translation>Jemand, der mitkocht und eingeplant wird, aber hier nicht hineinschaut.</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
    <message>
        <source>Hosts change people; your own hours are yours to change.</source>
        <translation>Personen ändern die Gastgeber, die eigenen Stunden ändern Sie selbst.</translation>
    </message>
</context>
<context>
    <name>PickEntry</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>PlaceEditor</name>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>What kind of place</source>
        <translation>Was für ein Platz</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>Room for food</source>
        <translation>Raum für Essen</translation>
    </message>
    <message>
        <source>Empty: as much as needed</source>
        <translation>Leer: so viel wie nötig</translation>
    </message>
    <message>
        <source>l</source>
        <translation>l</translation>
    </message>
    <message>
        <source>Warmer and colder by the hour</source>
        <translation>Wärmer und kälter je Stunde</translation>
    </message>
</context>
<context>
    <name>PlaceOven</name>
    <message>
        <source>Which oven</source>
        <translation>Welcher Ofen</translation>
    </message>
</context>
<context>
    <name>PlanBar</name>
    <message>
        <source>Stopping; the best plan so far is kept…</source>
        <translation>Wird angehalten; der bisher beste Plan bleibt …</translation>
    </message>
    <message>
        <source>Somebody is having this event planned. The plan appears here as soon as it is done.</source>
        <translation>Jemand lässt diesen Anlass gerade planen. Der Plan erscheint hier, sobald er fertig ist.</translation>
    </message>
    <message>
        <source>It could not be planned: %1</source>
        <translation>Es ließ sich nicht planen: %1</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Stop planning and keep the best plan so far</source>
        <translation>Planen anhalten und den bisher besten Plan behalten</translation>
    </message>
    <message>
        <source>What would help?</source>
        <translation>Was würde helfen?</translation>
    </message>
    <message>
        <source>Adapt the plan</source>
        <translation>Plan anpassen</translation>
    </message>
    <message>
        <source>Adapt the plan, moving as little as can be</source>
        <translation>Plan anpassen und so wenig wie möglich verschieben</translation>
    </message>
    <message>
        <source>Planning, %1</source>
        <translation>Plane, %1</translation>
    </message>
</context>
<context>
    <name>PlanMissing</name>
    <message>
        <source>This device is not let in</source>
        <translation>Dieses Gerät wird nicht eingelassen</translation>
    </message>
    <message>
        <source>No connection yet</source>
        <translation>Noch keine Verbindung</translation>
    </message>
    <message>
        <source>Connecting to your household…</source>
        <translation>Verbinde mit Ihrem Haushalt …</translation>
    </message>
    <message>
        <source>No event yet</source>
        <translation>Noch kein Anlass</translation>
    </message>
    <message>
        <source>No plan yet</source>
        <translation>Noch kein Plan</translation>
    </message>
    <message>
        <source>The server said: %1
Ask the host for a new invitation and join again.</source>
        <translation>Der Server sagte: %1
Bitten Sie um eine neue Einladung, und treten Sie wieder bei.</translation>
    </message>
    <message>
        <source>%1
It tries again by itself. Is the server running, and is this device on its network?</source>
        <translation>%1
Es wird von selbst weiter versucht. Läuft der Server, und ist dieses Gerät in seinem Netz?</translation>
    </message>
    <message>
        <source>One moment.</source>
        <translation>Einen Moment.</translation>
    </message>
    <message>
        <source>An event is one dinner: its guests, courses and dishes. As soon as somebody in the household makes one, it appears here.</source>
        <translation>Ein Anlass ist ein Essen: seine Gäste, Gänge und Gerichte. Sobald jemand im Haushalt einen anlegt, erscheint er hier.</translation>
    </message>
    <message>
        <source>It could not be planned</source>
        <translation>Es ließ sich nicht planen</translation>
    </message>
    <message>
        <source>Planning…</source>
        <translation>Plane …</translation>
    </message>
    <message>
        <source>%1
Mend it and plan again.</source>
        <translation>%1
Bringen Sie es in Ordnung, und planen Sie noch einmal.</translation>
    </message>
    <message>
        <source>Somebody is having this event planned. The plan appears here as soon as it is done.</source>
        <translation>Jemand lässt diesen Anlass gerade planen. Der Plan erscheint hier, sobald er fertig ist.</translation>
    </message>
    <message>
        <source>Stopping…</source>
        <translation>Wird angehalten …</translation>
    </message>
    <message>
        <source>The first plan appears in a moment, and gets better while you look.</source>
        <translation>Der erste Plan erscheint gleich und wird besser, während Sie zusehen.</translation>
    </message>
    <message>
        <source>The timeline appears here as soon as somebody who cooks has this event planned.</source>
        <translation>Der Zeitplan erscheint hier, sobald jemand, der mitkocht, diesen Anlass planen lässt.</translation>
    </message>
    <message>
        <source>From the serving times backwards, every step gets its time, its cook and its oven. It takes about 20 seconds; you see each better plan at once and can stop.</source>
        <translation>Von den Servierzeiten aus rückwärts bekommt jeder Schritt seine Zeit, seine Köchin oder seinen Koch und seinen Ofen. Das dauert etwa 20 Sekunden; Sie sehen jeden besseren Plan sofort und können anhalten.</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Plan this event</source>
        <translation>Diesen Anlass planen</translation>
    </message>
</context>
<context>
    <name>PreferencesPart</name>
    <message>
        <source>On this device</source>
        <translation>Auf diesem Gerät</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>As the desktop</source>
        <translation>Wie der Rechner</translation>
    </message>
    <message>
        <source>Temperatures</source>
        <translation>Temperaturen</translation>
    </message>
    <message>
        <source>As the household</source>
        <translation>Wie der Haushalt</translation>
    </message>
    <message>
        <source>Measures</source>
        <translation>Maße</translation>
    </message>
    <message>
        <source>Grams and litres</source>
        <translation>Gramm und Liter</translation>
    </message>
    <message>
        <source>Cups and ounces</source>
        <translation>Cups und Unzen</translation>
    </message>
    <message>
        <source>Colours</source>
        <translation>Farben</translation>
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
        <source>Text</source>
        <translation>Schrift</translation>
    </message>
    <message>
        <source>Small</source>
        <translation>Klein</translation>
    </message>
    <message>
        <source>Usual</source>
        <translation>Üblich</translation>
    </message>
    <message>
        <source>Large</source>
        <translation>Groß</translation>
    </message>
    <message>
        <source>To read from afar</source>
        <translation>Von weitem lesbar</translation>
    </message>
    <message>
        <source>Reminders make a sound</source>
        <translation>Erinnerungen sind zu hören</translation>
    </message>
</context>
<context>
    <name>PrintPanel</name>
    <message>
        <source>Print the run sheet</source>
        <translation>Ablaufzettel drucken</translation>
    </message>
    <message>
        <source>Large type for the kitchen wall: each cook&apos;s steps with their warnings; for everybody also the ovens&apos; programs, the breads and the shopping.</source>
        <translation>Große Schrift für die Küchenwand: die Schritte jedes Kochs mit ihren Warnungen; für alle zusammen auch die Ofenprogramme, die Brote und der Einkauf.</translation>
    </message>
    <message>
        <source>There is nothing to print before the event has a plan.</source>
        <translation>Zu drucken gibt es etwas, sobald der Anlass einen Plan hat.</translation>
    </message>
    <message>
        <source>For</source>
        <translation>Für</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>US Letter</source>
        <translation>US Letter</translation>
    </message>
    <message numerus="yes">
        <source>%n pages, kept at %1</source>
        <translation>
            <numerusform>%n Seite, abgelegt unter %1</numerusform>
            <numerusform>%n Seiten, abgelegt unter %1</numerusform>
        </translation>
    </message>
    <message>
        <source>One moment…</source>
        <translation>Einen Moment…</translation>
    </message>
    <message>
        <source>Make and open the PDF</source>
        <translation>Als PDF öffnen</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
</context>
<context>
    <name>RecipeEditor</name>
    <message>
        <source>Dish</source>
        <translation>Gericht</translation>
    </message>
    <message>
        <source>Fennel soup</source>
        <translation>Fenchelsuppe</translation>
    </message>
    <message>
        <source>For how many guests</source>
        <translation>Für wie viele Gäste</translation>
    </message>
    <message>
        <source>Dough</source>
        <translation>Teig</translation>
    </message>
    <message>
        <source>Ingredients</source>
        <translation>Zutaten</translation>
    </message>
    <message>
        <source>Steps</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>Waiting to be served</source>
        <translation>Warten aufs Servieren</translation>
    </message>
    <message>
        <source>At most so long after it is done</source>
        <translation>Höchstens so lange, nachdem es fertig ist</translation>
    </message>
    <message>
        <source>0: served at once</source>
        <translation>0: sofort serviert</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>How it waits</source>
        <translation>Wie es wartet</translation>
    </message>
    <message>
        <source>Which food-safety limits hold</source>
        <translation>Welche Grenzen der Lebensmittelsicherheit gelten</translation>
    </message>
    <message>
        <source>Less</source>
        <translation>Weniger</translation>
    </message>
    <message>
        <source>Another size, notes, bread…</source>
        <translation>Andere Größe, Notizen, Brot …</translation>
    </message>
    <message>
        <source>In another size</source>
        <translation>In anderer Größe</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>For the cooks</source>
        <translation>Für die, die kochen</translation>
    </message>
    <message>
        <source>Best from, after it is done</source>
        <translation>Am besten ab, nachdem es fertig ist</translation>
    </message>
    <message>
        <source>Best until</source>
        <translation>Am besten bis</translation>
    </message>
    <message>
        <source>This is no bread: take the dough out</source>
        <translation>Das ist kein Brot: Teig herausnehmen</translation>
    </message>
    <message>
        <source>This is a bread: give it a dough</source>
        <translation>Das ist ein Brot: Teig dazunehmen</translation>
    </message>
</context>
<context>
    <name>RemedyRow</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
</context>
<context>
    <name>ReminderRow</name>
    <message>
        <source>Missed</source>
        <translation>Verpasst</translation>
    </message>
    <message>
        <source>Missed: %1</source>
        <translation>Verpasst: %1</translation>
    </message>
    <message>
        <source>Show</source>
        <translation>Zeigen</translation>
    </message>
    <message>
        <source>Show: %1</source>
        <translation>Zeigen: %1</translation>
    </message>
    <message>
        <source>In 10 min</source>
        <translation>In 10 min</translation>
    </message>
    <message>
        <source>Again in 10 minutes: %1</source>
        <translation>In 10 Minuten noch einmal: %1</translation>
    </message>
    <message>
        <source>Seen to</source>
        <translation>Erledigt</translation>
    </message>
    <message>
        <source>Seen to: %1</source>
        <translation>Erledigt: %1</translation>
    </message>
</context>
<context>
    <name>ReminderStrip</name>
    <message>
        <source>Reminders</source>
        <translation>Erinnerungen</translation>
    </message>
    <message>
        <source>Only the newest</source>
        <translation>Nur die neueste</translation>
    </message>
    <message numerus="yes">
        <source>%n more</source>
        <translation>
            <numerusform>%n weitere</numerusform>
            <numerusform>%n weitere</numerusform>
        </translation>
    </message>
    <message>
        <source>Show only the newest reminder</source>
        <translation>Nur die neueste Erinnerung zeigen</translation>
    </message>
    <message numerus="yes">
        <source>Show %n more reminders</source>
        <translation>
            <numerusform>%n weitere Erinnerung zeigen</numerusform>
            <numerusform>%n weitere Erinnerungen zeigen</numerusform>
        </translation>
    </message>
    <message>
        <source>All seen to</source>
        <translation>Alles erledigt</translation>
    </message>
</context>
<context>
    <name>RiseChart</name>
    <message>
        <source>Rise of %1. %2. %3</source>
        <translation>Trieb von %1. %2. %3</translation>
    </message>
    <message>
        <source>Up and down tell how far it has risen</source>
        <translation>Auf und ab sagen, wie weit er gegangen ist</translation>
    </message>
    <message>
        <source>ready</source>
        <translation>reif</translation>
    </message>
    <message>
        <source>ready then</source>
        <translation>dann reif</translation>
    </message>
    <message>
        <source>wanted</source>
        <translation>gewünscht</translation>
    </message>
    <message>
        <source>now %1</source>
        <translation>jetzt %1</translation>
    </message>
</context>
<context>
    <name>ScalePanel</name>
    <message>
        <source>For how many guests</source>
        <translation>Für wie viele Gäste</translation>
    </message>
    <message>
        <source>%1 %2, %3</source>
        <translation>%1 %2, %3</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>ScreenBar</name>
    <message>
        <source>Screens</source>
        <translation>Bereiche</translation>
    </message>
    <message numerus="yes">
        <source>%1, %n waiting</source>
        <translation>
            <numerusform>%1, %n wartet</numerusform>
            <numerusform>%1, %n warten</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SettledRow</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
</context>
<context>
    <name>ShoppingBar</name>
    <message>
        <source>To buy</source>
        <translation>Zu kaufen</translation>
    </message>
    <message>
        <source>To take out</source>
        <translation>Herauszunehmen</translation>
    </message>
    <message>
        <source>All of it is in the basket or at hand</source>
        <translation>Alles ist im Korb oder im Haus</translation>
    </message>
    <message>
        <source>%1 of %2 still to buy</source>
        <translation>%1 von %2 noch zu kaufen</translation>
    </message>
    <message>
        <source>By day</source>
        <translation>Nach Tag</translation>
    </message>
    <message>
        <source>By section</source>
        <translation>Nach Abteilung</translation>
    </message>
    <message>
        <source>Only mine</source>
        <translation>Nur meins</translation>
    </message>
    <message>
        <source>Only open</source>
        <translation>Nur Offenes</translation>
    </message>
    <message>
        <source>To buy: %1</source>
        <translation>Zu kaufen: %1</translation>
    </message>
</context>
<context>
    <name>ShoppingLine</name>
    <message>
        <source>in the basket, %1</source>
        <translation>im Korb, %1</translation>
    </message>
    <message>
        <source>in the basket</source>
        <translation>im Korb</translation>
    </message>
    <message>
        <source>%1 buys it</source>
        <translation>%1 kauft es</translation>
    </message>
    <message>
        <source>to be told</source>
        <translation>wird noch gesagt</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1: close</source>
        <translation>%1: schließen</translation>
    </message>
    <message>
        <source>%1: who buys it, what is at hand</source>
        <translation>%1: wer es kauft, was im Haus ist</translation>
    </message>
</context>
<context>
    <name>ShoppingList</name>
    <message>
        <source>To buy</source>
        <translation>Zu kaufen</translation>
    </message>
    <message>
        <source>Nothing left here</source>
        <translation>Hier ist nichts mehr</translation>
    </message>
    <message>
        <source>Nothing to buy</source>
        <translation>Nichts zu kaufen</translation>
    </message>
    <message>
        <source>The list is being made…</source>
        <translation>Die Liste wird gemacht …</translation>
    </message>
    <message>
        <source>What is in the basket, or bought by others, is left out. Change that above.</source>
        <translation>Was im Korb ist oder andere kaufen, ist weggelassen. Ändern Sie das oben.</translation>
    </message>
    <message>
        <source>As soon as the event has dishes with ingredients, all of them stand here as one list.</source>
        <translation>Sobald der Anlass Gerichte mit Zutaten hat, stehen sie hier alle als eine Liste.</translation>
    </message>
    <message>
        <source>It comes from the server the first time, and is then here without a connection, too.</source>
        <translation>Sie kommt das erste Mal vom Server und ist danach auch ohne Verbindung hier.</translation>
    </message>
    <message>
        <source>Bought, but no dish asks for it any more: %1</source>
        <translation>Gekauft, aber kein Gericht verlangt es mehr: %1</translation>
    </message>
    <message>
        <source>Something no recipe asks for</source>
        <translation>Etwas, das kein Rezept verlangt</translation>
    </message>
    <message>
        <source>12 candles</source>
        <translation>12 Kerzen</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
</context>
<context>
    <name>ShoppingPanel</name>
    <message>
        <source>For %1</source>
        <translation>Für %1</translation>
    </message>
    <message>
        <source>It is in the house already</source>
        <translation>Ist schon im Haus</translation>
    </message>
    <message>
        <source>Who buys it</source>
        <translation>Wer es kauft</translation>
    </message>
    <message>
        <source>%1 buys all of this section</source>
        <translation>%1 kauft die ganze Abteilung</translation>
    </message>
    <message>
        <source>Take it off the list</source>
        <translation>Von der Liste nehmen</translation>
    </message>
</context>
<context>
    <name>StarterEditor</name>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>The jar by the window</source>
        <translation>Das Glas am Fenster</translation>
    </message>
    <message>
        <source>Feeding</source>
        <translation>Füttern</translation>
    </message>
    <message>
        <source>Last fed %1.</source>
        <translation>Zuletzt gefüttert %1.</translation>
    </message>
    <message>
        <source>No feeding is noted yet.</source>
        <translation>Noch ist kein Füttern notiert.</translation>
    </message>
    <message>
        <source>Fed just now</source>
        <translation>Eben gefüttert</translation>
    </message>
    <message>
        <source>An hour earlier</source>
        <translation>Eine Stunde früher</translation>
    </message>
    <message>
        <source>Ten minutes earlier</source>
        <translation>Zehn Minuten früher</translation>
    </message>
    <message>
        <source>Water on 100 of flour</source>
        <translation>Wasser auf 100 Mehl</translation>
    </message>
    <message>
        <source>Whole grain in its flour</source>
        <translation>Vollkorn in seinem Mehl</translation>
    </message>
    <message>
        <source>How it is kept before a build</source>
        <translation>Wie er vor dem Ansetzen steht</translation>
    </message>
    <message>
        <source>How lively it is</source>
        <translation>Wie lebhaft er ist</translation>
    </message>
    <message>
        <source>Vigour</source>
        <translation>Triebkraft</translation>
    </message>
    <message>
        <source>1 is average, 2 is twice as fast</source>
        <translation>1 ist durchschnittlich, 2 doppelt so schnell</translation>
    </message>
    <message>
        <source>How unsure that is</source>
        <translation>Wie unsicher das ist</translation>
    </message>
    <message>
        <source>0.2 is usual; less when it was watched often</source>
        <translation>0,2 ist üblich; weniger, wenn er oft beobachtet wurde</translation>
    </message>
    <message>
        <source>Nothing was learned yet. Tell on the doughs&apos; screen what you see of a levain: its vigour is then corrected by itself.</source>
        <translation>Noch ist nichts gelernt. Sagen Sie unter „Teige“, was Sie an einem Vorteig sehen: Seine Triebkraft wird dann von selbst berichtigt.</translation>
    </message>
    <message>
        <source>What was seen of it</source>
        <translation>Was an ihm gesehen wurde</translation>
    </message>
    <message>
        <source>Nothing yet.</source>
        <translation>Noch nichts.</translation>
    </message>
</context>
<context>
    <name>StepEditor</name>
    <message>
        <source>As said to a cook</source>
        <translation>Wie man es beim Kochen sagt</translation>
    </message>
    <message>
        <source>What kind of step</source>
        <translation>Was für ein Schritt</translation>
    </message>
    <message>
        <source>How long</source>
        <translation>Wie lange</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>May last up to</source>
        <translation>Darf dauern bis</translation>
    </message>
    <message>
        <source>Empty: just as long</source>
        <translation>Leer: genau so lange</translation>
    </message>
    <message>
        <source>Burners</source>
        <translation>Herdplatten</translation>
    </message>
    <message>
        <source>Empty: one</source>
        <translation>Leer: eine</translation>
    </message>
    <message>
        <source>Mass, for the time it needs</source>
        <translation>Masse, für die nötige Zeit</translation>
    </message>
    <message>
        <source>Empty: as long as said</source>
        <translation>Leer: so lange wie gesagt</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>How it thaws</source>
        <translation>Wie es auftaut</translation>
    </message>
    <message>
        <source>Which stage of the dough</source>
        <translation>Welche Stufe des Teigs</translation>
    </message>
    <message>
        <source>The dough decides how long: flour, levain and temperature are known.</source>
        <translation>Wie lange, entscheidet der Teig: Mehl, Vorteig und Temperatur sind bekannt.</translation>
    </message>
    <message>
        <source>Only a bread ferments: give the recipe a dough, below.</source>
        <translation>Nur ein Brot gärt: Geben Sie dem Rezept unten einen Teig.</translation>
    </message>
    <message>
        <source>Where it may stand</source>
        <translation>Wo es stehen darf</translation>
    </message>
    <message>
        <source>None marked: anywhere that suits</source>
        <translation>Nichts gewählt: wo immer es passt</translation>
    </message>
    <message>
        <source>Takes of the things there are few of</source>
        <translation>Braucht von den Dingen, von denen es wenige gibt</translation>
    </message>
    <message>
        <source>What to do, and how to tell that it is done</source>
        <translation>Was zu tun ist, und woran man sieht, dass es fertig ist</translation>
    </message>
    <message>
        <source>Less</source>
        <translation>Weniger</translation>
    </message>
    <message>
        <source>Order, bounds, attention…</source>
        <translation>Reihenfolge, Grenzen, Aufsicht …</translation>
    </message>
</context>
<context>
    <name>StepMore</name>
    <message>
        <source>It comes after the marked steps.</source>
        <translation>Er kommt nach den gewählten Schritten.</translation>
    </message>
    <message>
        <source>It comes after the step listed before it. Mark steps to say it otherwise.</source>
        <translation>Er kommt nach dem Schritt davor. Wählen Sie Schritte, um es anders zu sagen.</translation>
    </message>
    <message>
        <source>After “%1”</source>
        <translation>Nach „%1“</translation>
    </message>
    <message>
        <source>At least later by</source>
        <translation>Mindestens später um</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>At most later by</source>
        <translation>Höchstens später um</translation>
    </message>
    <message>
        <source>Counted from its start, not its end</source>
        <translation>Gezählt ab seinem Anfang, nicht seinem Ende</translation>
    </message>
    <message>
        <source>Nothing comes before it</source>
        <translation>Nichts kommt davor</translation>
    </message>
    <message>
        <source>If it goes quickly</source>
        <translation>Wenn es schnell geht</translation>
    </message>
    <message>
        <source>If it drags on</source>
        <translation>Wenn es sich zieht</translation>
    </message>
    <message>
        <source>Begins at most so long before serving</source>
        <translation>Beginnt höchstens so lange vor dem Servieren</translation>
    </message>
    <message>
        <source>Ends at least so long before serving</source>
        <translation>Endet mindestens so lange vor dem Servieren</translation>
    </message>
    <message>
        <source>Attention it takes</source>
        <translation>Nötige Aufsicht</translation>
    </message>
    <message>
        <source>Empty: by its kind</source>
        <translation>Leer: nach seiner Art</translation>
    </message>
    <message>
        <source>Room it takes</source>
        <translation>Nötiger Raum</translation>
    </message>
    <message>
        <source>l</source>
        <translation>l</translation>
    </message>
    <message>
        <source>Skill the cook must have</source>
        <translation>Nötiges Können</translation>
    </message>
    <message>
        <source>shaping</source>
        <translation>Formen</translation>
    </message>
    <message>
        <source>Food-safety limits of this step</source>
        <translation>Grenzen der Lebensmittelsicherheit dieses Schritts</translation>
    </message>
    <message>
        <source>May be left out when the day has no room for it</source>
        <translation>Darf entfallen, wenn der Tag keinen Platz dafür hat</translation>
    </message>
</context>
<context>
    <name>StepMoveRow</name>
    <message>
        <source>What if it stood elsewhere?</source>
        <translation>Was, wenn er woanders stünde?</translation>
    </message>
    <message>
        <source>5 min</source>
        <translation>5 min</translation>
    </message>
    <message>
        <source>5 minutes earlier</source>
        <translation>5 Minuten früher</translation>
    </message>
    <message>
        <source>5 minutes later</source>
        <translation>5 Minuten später</translation>
    </message>
    <message>
        <source>What would move?</source>
        <translation>Was würde sich verschieben?</translation>
    </message>
    <message>
        <source>Leave it where it is</source>
        <translation>Lassen, wo er ist</translation>
    </message>
    <message>
        <source>Let go</source>
        <translation>Fallen lassen</translation>
    </message>
    <message>
        <source>Keep it there</source>
        <translation>Dort festhalten</translation>
    </message>
    <message>
        <source>Leave its time to the planner</source>
        <translation>Seine Zeit dem Plan überlassen</translation>
    </message>
    <message>
        <source>Keep it at this time, whatever else moves</source>
        <translation>Zu dieser Zeit festhalten, was auch sonst sich verschiebt</translation>
    </message>
    <message>
        <source>Or drag its bar; on a keyboard, Control with the arrows.</source>
        <translation>Oder ziehen Sie seinen Balken; mit der Tastatur: Strg und die Pfeiltasten.</translation>
    </message>
</context>
<context>
    <name>StepPanel</name>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>Cook</source>
        <translation>Wer</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>Dough</source>
        <translation>Teig</translation>
    </message>
    <message>
        <source>Why then</source>
        <translation>Warum dann</translation>
    </message>
    <message>
        <source>Slack</source>
        <translation>Spielraum</translation>
    </message>
    <message>
        <source>Weigh</source>
        <translation>Abwiegen</translation>
    </message>
    <message>
        <source>What to do</source>
        <translation>Was zu tun ist</translation>
    </message>
    <message>
        <source>Take care</source>
        <translation>Vorsicht</translation>
    </message>
</context>
<context>
    <name>StepsEditor</name>
    <message>
        <source>The next step, as said to a cook</source>
        <translation>Der nächste Schritt, wie man ihn beim Kochen sagt</translation>
    </message>
    <message>
        <source>The first step, as said to a cook</source>
        <translation>Der erste Schritt, wie man ihn beim Kochen sagt</translation>
    </message>
    <message>
        <source>Chop the fennel</source>
        <translation>Fenchel hacken</translation>
    </message>
    <message>
        <source>What kind of step</source>
        <translation>Was für ein Schritt</translation>
    </message>
    <message>
        <source>How long</source>
        <translation>Wie lange</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
    <message>
        <source>Add the step</source>
        <translation>Schritt hinzufügen</translation>
    </message>
</context>
<context>
    <name>TaskCard</name>
    <message>
        <source>%1, %2, %3</source>
        <translation>%1, %2, %3</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>under way</source>
        <translation>im Gang</translation>
    </message>
    <message>
        <source>not begun</source>
        <translation>nicht begonnen</translation>
    </message>
    <message>
        <source>Take care: %1</source>
        <translation>Vorsicht: %1</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>Begin: %1</source>
        <translation>Beginnen: %1</translation>
    </message>
    <message>
        <source>+10 min</source>
        <translation>+10 min</translation>
    </message>
    <message>
        <source>Needs 10 minutes more: %1</source>
        <translation>Braucht 10 Minuten mehr: %1</translation>
    </message>
    <message>
        <source>Hand over</source>
        <translation>Übergeben</translation>
    </message>
    <message>
        <source>Hand over: %1</source>
        <translation>Übergeben: %1</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>Write a note on: %1</source>
        <translation>Notiz schreiben zu: %1</translation>
    </message>
    <message>
        <source>Skip</source>
        <translation>Auslassen</translation>
    </message>
    <message>
        <source>Will not be done: %1</source>
        <translation>Wird nicht gemacht: %1</translation>
    </message>
    <message>
        <source>More</source>
        <translation>Mehr</translation>
    </message>
    <message>
        <source>Fewer answers: %1</source>
        <translation>Weniger Antworten: %1</translation>
    </message>
    <message>
        <source>More answers: %1</source>
        <translation>Weitere Antworten: %1</translation>
    </message>
</context>
<context>
    <name>TaskLine</name>
    <message>
        <source>%1: %2, %3, %4</source>
        <translation>%1: %2, %3, %4</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
</context>
<context>
    <name>TaskWordsColumn</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>TasksPage</name>
    <message>
        <source>Whose tasks</source>
        <translation>Wessen Aufgaben</translation>
    </message>
    <message>
        <source>Whose tasks are wanted here? Choose a cook.</source>
        <translation>Wessen Aufgaben sollen hier stehen? Wählen Sie jemanden.</translation>
    </message>
    <message>
        <source>Next today</source>
        <translation>Heute als Nächstes</translation>
    </message>
    <message>
        <source>How the next days begin</source>
        <translation>Wie die nächsten Tage beginnen</translation>
    </message>
    <message>
        <source>then one more that day</source>
        <translation>dann noch eins an dem Tag</translation>
    </message>
    <message>
        <source>then %1 more that day</source>
        <translation>dann noch %1 an dem Tag</translation>
    </message>
    <message>
        <source>To take out ahead</source>
        <translation>Vorher herauszunehmen</translation>
    </message>
    <message>
        <source>Looks after itself</source>
        <translation>Läuft von selbst</translation>
    </message>
    <message>
        <source>The others, now</source>
        <translation>Die anderen, jetzt</translation>
    </message>
    <message>
        <source>Everybody, now</source>
        <translation>Alle, jetzt</translation>
    </message>
    <message>
        <source>No tasks yet</source>
        <translation>Noch keine Aufgaben</translation>
    </message>
    <message>
        <source>Tasks come from the plan. Once the event is planned, each cook finds here what to do now and what comes next.</source>
        <translation>Aufgaben kommen aus dem Plan. Sobald der Anlass geplant ist, finden hier alle, die kochen, was jetzt zu tun ist und was danach kommt.</translation>
    </message>
    <message>
        <source>by plan</source>
        <translation>nach Plan</translation>
    </message>
</context>
<context>
    <name>TellPanel</name>
    <message>
        <source>Tell what you see</source>
        <translation>Sagen, was Sie sehen</translation>
    </message>
    <message>
        <source>As soon as this stage stands, you can tell here how it is doing.</source>
        <translation>Sobald diese Stufe steht, können Sie hier sagen, wie es geht.</translation>
    </message>
    <message>
        <source>Cooks can tell here how the dough is doing.</source>
        <translation>Wer kocht, kann hier sagen, wie es dem Teig geht.</translation>
    </message>
    <message>
        <source>Press a floured finger into the dough. The dent…</source>
        <translation>Drücken Sie einen bemehlten Finger in den Teig. Die Delle …</translation>
    </message>
    <message>
        <source>springs back at once</source>
        <translation>springt sofort zurück</translation>
    </message>
    <message>
        <source>comes back slowly</source>
        <translation>kommt langsam zurück</translation>
    </message>
    <message>
        <source>stays</source>
        <translation>bleibt</translation>
    </message>
    <message>
        <source>The dent %1</source>
        <translation>Die Delle %1</translation>
    </message>
    <message>
        <source>Risen to how many times its volume?</source>
        <translation>Auf das Wievielfache gegangen?</translation>
    </message>
    <message>
        <source>Risen less</source>
        <translation>Weniger gegangen</translation>
    </message>
    <message>
        <source>Risen more</source>
        <translation>Mehr gegangen</translation>
    </message>
    <message>
        <source>How warm is the dough inside?</source>
        <translation>Wie warm ist der Teig innen?</translation>
    </message>
    <message>
        <source>Colder</source>
        <translation>Kälter</translation>
    </message>
    <message>
        <source>Warmer</source>
        <translation>Wärmer</translation>
    </message>
    <message>
        <source>Working out what that means…</source>
        <translation>Es wird ausgerechnet, was das heißt …</translation>
    </message>
    <message>
        <source>Then: %1</source>
        <translation>Dann: %1</translation>
    </message>
    <message>
        <source>That changes nothing in the forecast.</source>
        <translation>Das ändert nichts an der Vorhersage.</translation>
    </message>
    <message>
        <source>Tell it</source>
        <translation>Sagen</translation>
    </message>
    <message>
        <source>Don&apos;t tell it</source>
        <translation>Nicht sagen</translation>
    </message>
    <message>
        <source>Raw dough is not for tasting; wash your hands after touching it.</source>
        <translation>Rohen Teig nicht probieren; nach dem Anfassen Hände waschen.</translation>
    </message>
</context>
<context>
    <name>TimeAxis</name>
    <message>
        <source>Now %1</source>
        <translation>Jetzt %1</translation>
    </message>
</context>
<context>
    <name>TimeEntry</name>
    <message>
        <source>%1: earlier</source>
        <translation>%1: früher</translation>
    </message>
    <message>
        <source>Not a time of day</source>
        <translation>Keine Uhrzeit</translation>
    </message>
    <message>
        <source>%1: later</source>
        <translation>%1: später</translation>
    </message>
</context>
<context>
    <name>TimelineBar</name>
    <message>
        <source>Zoom out</source>
        <translation>Verkleinern</translation>
    </message>
    <message>
        <source>Zoom in</source>
        <translation>Vergrößern</translation>
    </message>
    <message>
        <source>All</source>
        <translation>Alles</translation>
    </message>
    <message>
        <source>Show the whole plan</source>
        <translation>Den ganzen Plan zeigen</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Jetzt</translation>
    </message>
    <message>
        <source>Go to now</source>
        <translation>Zu jetzt</translation>
    </message>
    <message>
        <source>Serving</source>
        <translation>Servieren</translation>
    </message>
    <message>
        <source>Go to the serving</source>
        <translation>Zum Servieren</translation>
    </message>
    <message>
        <source>Plan anew</source>
        <translation>Neu planen</translation>
    </message>
    <message>
        <source>Plan this event anew</source>
        <translation>Diesen Anlass neu planen</translation>
    </message>
</context>
<context>
    <name>VersionsCard</name>
    <message>
        <source>%1 changed this event meanwhile</source>
        <translation>%1 hat diesen Anlass inzwischen geändert</translation>
    </message>
    <message>
        <source>This event was changed elsewhere meanwhile</source>
        <translation>Dieser Anlass wurde inzwischen anderswo geändert</translation>
    </message>
    <message>
        <source>%1. Mine: %2. Theirs: %3.</source>
        <translation>%1. Meine: %2. Die andere: %3.</translation>
    </message>
    <message>
        <source>Mine: %1</source>
        <translation>Meine: %1</translation>
    </message>
    <message>
        <source>Theirs: %1</source>
        <translation>Die andere: %1</translation>
    </message>
</context>
<context>
    <name>WarningsCard</name>
    <message>
        <source>Look to this</source>
        <translation>Darauf achten</translation>
    </message>
    <message>
        <source>No medical advice: ask the guest, and read the label of what you buy.</source>
        <translation>Kein medizinischer Rat: Fragen Sie den Gast, und lesen Sie das Etikett dessen, was Sie kaufen.</translation>
    </message>
</context>
<context>
    <name>WhatIfFacts</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>WhatIfPanel</name>
    <message>
        <source>What if? %1</source>
        <translation>Was wäre, wenn? %1</translation>
    </message>
    <message>
        <source>What if?</source>
        <translation>Was wäre, wenn?</translation>
    </message>
    <message>
        <source>Asking what would move…</source>
        <translation>Es wird gefragt, was sich verschieben würde …</translation>
    </message>
    <message>
        <source>Worse</source>
        <translation>Schlechter</translation>
    </message>
    <message>
        <source>Better</source>
        <translation>Besser</translation>
    </message>
    <message>
        <source>Applying…</source>
        <translation>Wird angewendet …</translation>
    </message>
    <message>
        <source>Do it</source>
        <translation>So machen</translation>
    </message>
    <message>
        <source>Do it, for everybody</source>
        <translation>So machen, für alle</translation>
    </message>
    <message>
        <source>Leave it</source>
        <translation>Lassen</translation>
    </message>
    <message>
        <source>Leave everything as it is</source>
        <translation>Alles lassen, wie es ist</translation>
    </message>
</context>
<context>
    <name>suppertide::AmountWords</name>
    <message>
        <source>%1 g</source>
        <translation>%1 g</translation>
    </message>
    <message>
        <source>%1 kg</source>
        <translation>%1 kg</translation>
    </message>
    <message>
        <source>%1 ml</source>
        <translation>%1 ml</translation>
    </message>
    <message>
        <source>%1 l</source>
        <translation>%1 l</translation>
    </message>
    <message>
        <source>%1 oz</source>
        <translation>%1 oz</translation>
    </message>
    <message>
        <source>%1 lb</source>
        <translation>%1 lb</translation>
    </message>
    <message>
        <source>%1 %2 oz</source>
        <translation>%1 %2 oz</translation>
    </message>
    <message>
        <source>%1 cups</source>
        <translation>%1 Tassen</translation>
    </message>
    <message>
        <source>%1 cup</source>
        <translation>%1 Tasse</translation>
    </message>
    <message>
        <source>%1 tbsp</source>
        <translation>%1 EL</translation>
    </message>
    <message>
        <source>%1 tsp</source>
        <translation>%1 TL</translation>
    </message>
</context>
<context>
    <name>suppertide::CautionWords</name>
    <message>
        <source>Don&apos;t taste raw dough or batter, and wash your hands and the bench after handling flour.</source>
        <translation>Rohen Teig nicht probieren; Hände und Arbeitsfläche nach dem Umgang mit Mehl waschen.</translation>
    </message>
    <message>
        <source>Keep raw egg cold until it is used, don&apos;t taste it, and wash what it touched.</source>
        <translation>Rohes Ei bis zum Gebrauch kalt halten, nicht probieren, und waschen, was es berührt hat.</translation>
    </message>
    <message>
        <source>Use dry oven gloves, and say so before you open the oven.</source>
        <translation>Trockene Ofenhandschuhe nehmen, und Bescheid sagen, bevor Sie den Ofen öffnen.</translation>
    </message>
    <message>
        <source>Stand back when steam comes out: it burns before you see it.</source>
        <translation>Abstand halten, wenn Dampf austritt: Er verbrüht, bevor man ihn sieht.</translation>
    </message>
    <message>
        <source>Keep it away from food that is ready to eat, and wash hands, board and knife before anything else.</source>
        <translation>Von verzehrfertigem Essen fernhalten, und Hände, Brett und Messer waschen, bevor etwas anderes drankommt.</translation>
    </message>
    <message>
        <source>The clock doesn&apos;t prove that it is done: put a thermometer into the thickest part.</source>
        <translation>Die Uhr beweist nicht, dass es gar ist: Stechen Sie ein Thermometer in die dickste Stelle.</translation>
    </message>
    <message>
        <source>Don&apos;t leave it standing out longer than the plan says; put it back in the fridge when in doubt.</source>
        <translation>Nicht länger draußen stehen lassen, als der Plan sagt; im Zweifel zurück in den Kühlschrank.</translation>
    </message>
    <message>
        <source>Thaw it in the fridge on a tray, not on the counter.</source>
        <translation>Im Kühlschrank auf einem Blech auftauen, nicht auf der Arbeitsfläche.</translation>
    </message>
    <message>
        <source>Spread it in shallow dishes so that it gets cold fast, then put it in the fridge.</source>
        <translation>In flachen Schalen verteilen, damit es schnell kalt wird, dann in den Kühlschrank stellen.</translation>
    </message>
    <message>
        <source>A guest must not have what is in this: use clean boards, knives and pans, and keep it apart.</source>
        <translation>Ein Gast darf nicht bekommen, was hier drin ist: saubere Bretter, Messer und Pfannen nehmen, und es getrennt halten.</translation>
    </message>
    <message>
        <source>Stay with it, and never put water on burning fat: cover it.</source>
        <translation>Dabeibleiben, und nie Wasser auf brennendes Fett geben: abdecken.</translation>
    </message>
    <message>
        <source>Heat it until it steams in the middle, once, and don&apos;t keep it after.</source>
        <translation>Erhitzen, bis es in der Mitte dampft, nur einmal, und danach nicht aufheben.</translation>
    </message>
    <message>
        <source>Read the recipe&apos;s own caution.</source>
        <translation>Lesen Sie den Hinweis des Rezepts.</translation>
    </message>
</context>
<context>
    <name>suppertide::ClashModel</name>
    <message>
        <source>These cannot all be had:</source>
        <translation>Das geht nicht alles zugleich:</translation>
    </message>
</context>
<context>
    <name>suppertide::Document</name>
    <message>
        <source>Counter</source>
        <translation>Arbeitsfläche</translation>
    </message>
    <message>
        <source>Fridge</source>
        <translation>Kühlschrank</translation>
    </message>
    <message>
        <source>Freezer</source>
        <translation>Gefrierfach</translation>
    </message>
</context>
<context>
    <name>suppertide::DoughReader</name>
    <message>
        <source>Levain</source>
        <translation>Vorteig</translation>
    </message>
    <message>
        <source>First rise</source>
        <translation>Stockgare</translation>
    </message>
    <message>
        <source>Final proof</source>
        <translation>Stückgare</translation>
    </message>
    <message>
        <source>Preferment</source>
        <translation>Vorteig mit Hefe</translation>
    </message>
    <message>
        <source>Ferment</source>
        <translation>Gare</translation>
    </message>
    <message>
        <source>Not ready at this place in the planned time</source>
        <translation>An diesem Platz in der geplanten Zeit nicht reif</translation>
    </message>
    <message>
        <source>Ready %1</source>
        <translation>Reif %1</translation>
    </message>
    <message>
        <source>Ready from %1</source>
        <translation>Reif ab %1</translation>
    </message>
    <message>
        <source>%1, best at %2</source>
        <translation>%1, am besten um %2</translation>
    </message>
    <message>
        <source>Over since %1</source>
        <translation>Vorbei seit %1</translation>
    </message>
    <message>
        <source>Begins at %1, in %2</source>
        <translation>Beginnt um %1, in %2</translation>
    </message>
    <message>
        <source>about %1 times its volume</source>
        <translation>etwa auf das %1-Fache gegangen</translation>
    </message>
    <message>
        <source>rising</source>
        <translation>geht noch</translation>
    </message>
    <message>
        <source>Now %1</source>
        <translation>Jetzt %1</translation>
    </message>
    <message>
        <source>Now %1. Ready in %2</source>
        <translation>Jetzt %1. Reif in %2</translation>
    </message>
    <message>
        <source>Ready now: %1</source>
        <translation>Jetzt reif: %1</translation>
    </message>
    <message>
        <source>Past its window since %1: look at it now</source>
        <translation>Seit %1 über seine Zeit: jetzt ansehen</translation>
    </message>
    <message>
        <source>%1 measured at %2</source>
        <translation>%1, gemessen um %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1 at %2, %3</source>
        <translation>%1 um %2, %3</translation>
    </message>
</context>
<context>
    <name>suppertide::DoughsController</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Seen at %1: %2 times</source>
        <translation>Gesehen um %1: %2-fach</translation>
    </message>
    <message>
        <source>%1 times</source>
        <translation>%1-fach</translation>
    </message>
    <message>
        <source>How it would change can&apos;t be shown now. You can tell it all the same.</source>
        <translation>Was sich ändern würde, lässt sich jetzt nicht zeigen. Sagen können Sie es trotzdem.</translation>
    </message>
</context>
<context>
    <name>suppertide::Draft</name>
    <message>
        <source>First choose which version holds.</source>
        <translation>Wählen Sie erst, welche Fassung gilt.</translation>
    </message>
    <message>
        <source>Somebody else wrote this at the same moment. Look at both versions, then save again.</source>
        <translation>Jemand anders hat das im selben Moment geschrieben. Sehen Sie beide Fassungen an, und speichern Sie dann wieder.</translation>
    </message>
    <message>
        <source>Somebody deleted this meanwhile. Saving makes it anew.</source>
        <translation>Jemand hat das inzwischen gelöscht. Speichern legt es neu an.</translation>
    </message>
    <message>
        <source>This can&apos;t be saved yet: %1</source>
        <translation>Das lässt sich noch nicht speichern: %1</translation>
    </message>
</context>
<context>
    <name>suppertide::DraftShelf</name>
    <message>
        <source>“%1”: the server did not take it. It is kept under Kitchen, to be put right and saved again.</source>
        <translation>„%1“: Der Server hat es nicht angenommen. Es liegt unter Küche bereit, um es zu berichtigen und neu zu speichern.</translation>
    </message>
</context>
<context>
    <name>suppertide::EventController</name>
    <message>
        <source>bread</source>
        <translation>Brot</translation>
    </message>
    <message>
        <source>Dinner</source>
        <translation>Essen</translation>
    </message>
    <message>
        <source>Main course</source>
        <translation>Hauptgang</translation>
    </message>
    <message>
        <source>Another course</source>
        <translation>Noch ein Gang</translation>
    </message>
</context>
<context>
    <name>suppertide::EventReader</name>
    <message>
        <source>No guests yet</source>
        <translation>Noch keine Gäste</translation>
    </message>
    <message>
        <source>1 guest</source>
        <translation>1 Gast</translation>
    </message>
    <message>
        <source>%1 guests</source>
        <translation>%1 Gäste</translation>
    </message>
    <message>
        <source>%1, %2 with needs</source>
        <translation>%1, %2 mit Bedürfnissen</translation>
    </message>
    <message>
        <source>for everybody</source>
        <translation>für alle</translation>
    </message>
    <message>
        <source>for %1</source>
        <translation>für %1</translation>
    </message>
    <message>
        <source>whenever awake</source>
        <translation>wann immer wach</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
</context>
<context>
    <name>suppertide::EventVersions</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>portion %1</source>
        <translation>Portion %1</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>for %1</source>
        <translation>für %1</translation>
    </message>
    <message>
        <source>not there</source>
        <translation>gibt es nicht</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>Kitchen</source>
        <translation>Küche</translation>
    </message>
    <message>
        <source>Course</source>
        <translation>Gang</translation>
    </message>
    <message>
        <source>Guest</source>
        <translation>Gast</translation>
    </message>
    <message>
        <source>Dish</source>
        <translation>Gericht</translation>
    </message>
    <message>
        <source>Cooks</source>
        <translation>Wer kocht</translation>
    </message>
</context>
<context>
    <name>suppertide::FirstRun</name>
    <message>
        <source>Host</source>
        <translation>Gastgeber</translation>
    </message>
    <message>
        <source>Our kitchen</source>
        <translation>Unsere Küche</translation>
    </message>
    <message>
        <source>Type the invitation code. Somebody who is a host of the household makes one under Household.</source>
        <translation>Tippen Sie den Einladungscode ein. Wer in dem Haushalt Gastgeber ist, macht einen unter „Haushalt“.</translation>
    </message>
    <message>
        <source>Type the address of the household&apos;s server, such as 192.168.1.4:50710. It stands beside the invitation code.</source>
        <translation>Tippen Sie die Adresse vom Server des Haushalts ein, etwa 192.168.1.4:50710. Sie steht neben dem Einladungscode.</translation>
    </message>
    <message>
        <source>The server does not know this code. It may be mistyped, used already or too old: ask the host for a new one.</source>
        <translation>Der Server kennt diesen Code nicht. Vielleicht ist er vertippt, schon benutzt oder zu alt: Bitten Sie um einen neuen.</translation>
    </message>
    <message>
        <source>Too many wrong codes were tried. Wait some minutes, then try again.</source>
        <translation>Es wurden zu viele falsche Codes versucht. Warten Sie einige Minuten, und versuchen Sie es dann wieder.</translation>
    </message>
    <message>
        <source>At %1 answers another server than the one you were invited to. Check the address, and ask the host for a new invitation.</source>
        <translation>Unter %1 antwortet ein anderer Server als der, zu dem Sie eingeladen sind. Prüfen Sie die Adresse, und bitten Sie um eine neue Einladung.</translation>
    </message>
    <message>
        <source>No server answers at %1 to this code. If the code has a second part, after a dot, give that, too. Else: is the server running, and is this device on its network?</source>
        <translation>Unter %1 antwortet kein Server auf diesen Code. Hat der Code nach einem Punkt einen zweiten Teil, geben Sie auch den an. Sonst: Läuft der Server, und ist dieses Gerät in seinem Netz?</translation>
    </message>
    <message>
        <source>No server answers at %1. Is it running, is the address right, and is this device on its network?</source>
        <translation>Unter %1 antwortet kein Server. Läuft er, stimmt die Adresse, und ist dieses Gerät in seinem Netz?</translation>
    </message>
    <message>
        <source>This code cannot be right: %1.</source>
        <translation>Dieser Code kann nicht stimmen: %1.</translation>
    </message>
    <message>
        <source>That did not work: %1. Nothing was changed; you can try again.</source>
        <translation>Das ging nicht: %1. Es wurde nichts geändert; Sie können es noch einmal versuchen.</translation>
    </message>
</context>
<context>
    <name>suppertide::FormulaLines</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>Grams and percentages are worked out by the server, and there is no connection.</source>
        <translation>Gramm und Prozente rechnet der Server aus, und es gibt keine Verbindung.</translation>
    </message>
</context>
<context>
    <name>suppertide::HouseholdController</name>
    <message>
        <source>Reader</source>
        <translation>Nur Mitlesen</translation>
    </message>
    <message>
        <source>Cook</source>
        <translation>Koch oder Köchin</translation>
    </message>
    <message>
        <source>Host</source>
        <translation>Gastgeber</translation>
    </message>
    <message>
        <source>Changes everything: events, kitchen and people.</source>
        <translation>Ändert alles: Anlässe, Küche und Personen.</translation>
    </message>
    <message>
        <source>Reports what is done, plans, and changes recipes and starters.</source>
        <translation>Meldet, was getan ist, plant, und ändert Rezepte und Sauerteige.</translation>
    </message>
    <message>
        <source>Sees everything, changes nothing.</source>
        <translation>Sieht alles, ändert nichts.</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Only hosts may do this.</source>
        <translation>Das dürfen nur Gastgeber.</translation>
    </message>
    <message>
        <source>The server can&apos;t be reached now. Try again when the connection is live.</source>
        <translation>Der Server ist gerade nicht erreichbar. Versuchen Sie es wieder, wenn die Verbindung steht.</translation>
    </message>
    <message>
        <source>For somebody new, as %1</source>
        <translation>Für jemand Neues, als %1</translation>
    </message>
    <message>
        <source>For %1, as %2</source>
        <translation>Für %1, als %2</translation>
    </message>
    <message>
        <source>nobody any more</source>
        <translation>niemandem mehr</translation>
    </message>
</context>
<context>
    <name>suppertide::HouseholdSession</name>
    <message>
        <source>What you do now is lost if this window closes before it is sent: %1</source>
        <translation>Was Sie jetzt tun, geht verloren, wenn dieses Fenster schließt, bevor es gesendet ist: %1</translation>
    </message>
    <message numerus="yes">
        <source>Connecting, %n waiting</source>
        <translation>
            <numerusform>Verbinde, %n wartet</numerusform>
            <numerusform>Verbinde, %n warten</numerusform>
        </translation>
    </message>
    <message>
        <source>Connecting…</source>
        <translation>Verbinde …</translation>
    </message>
    <message numerus="yes">
        <source>Live, %n being sent</source>
        <translation>
            <numerusform>Verbunden, %n wird gesendet</numerusform>
            <numerusform>Verbunden, %n werden gesendet</numerusform>
        </translation>
    </message>
    <message>
        <source>Live</source>
        <translation>Verbunden</translation>
    </message>
    <message numerus="yes">
        <source>Offline, %n waiting</source>
        <translation>
            <numerusform>Offline, %n wartet</numerusform>
            <numerusform>Offline, %n warten</numerusform>
        </translation>
    </message>
    <message>
        <source>Offline</source>
        <translation>Offline</translation>
    </message>
    <message numerus="yes">
        <source>Not let in, %n waiting</source>
        <translation>
            <numerusform>Nicht eingelassen, %n wartet</numerusform>
            <numerusform>Nicht eingelassen, %n warten</numerusform>
        </translation>
    </message>
    <message>
        <source>Not let in</source>
        <translation>Nicht eingelassen</translation>
    </message>
    <message>
        <source>This could not be kept on this device, so it was not done: %1</source>
        <translation>Das konnte auf diesem Gerät nicht festgehalten werden und ist darum nicht geschehen: %1</translation>
    </message>
    <message>
        <source>There is no server to tell this to.</source>
        <translation>Es gibt keinen Server, dem das zu sagen wäre.</translation>
    </message>
</context>
<context>
    <name>suppertide::IngredientReader</name>
    <message>
        <source>Lines are read by the server, and there is no connection. They are read when it is back.</source>
        <translation>Zeilen liest der Server, und es gibt keine Verbindung. Sie werden gelesen, wenn sie wieder da ist.</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>to taste</source>
        <translation>nach Geschmack</translation>
    </message>
    <message>
        <source>No amount is said.</source>
        <translation>Es ist keine Menge genannt.</translation>
    </message>
    <message>
        <source>Not a measure, so it stays without one.</source>
        <translation>Kein Maß, darum bleibt es ohne.</translation>
    </message>
    <message>
        <source>Not in the table of ingredients: what it holds is not known.</source>
        <translation>Nicht in der Zutatentabelle: Was es enthält, ist nicht bekannt.</translation>
    </message>
    <message>
        <source>Several are called so; the usual one was taken.</source>
        <translation>Mehrere heißen so; das Übliche wurde genommen.</translation>
    </message>
    <message>
        <source>No mass is known for this measure, so the measure stays.</source>
        <translation>Für dieses Maß ist keine Masse bekannt, darum bleibt das Maß.</translation>
    </message>
    <message>
        <source>The mass is reckoned from another measure or form.</source>
        <translation>Die Masse ist aus einem anderen Maß oder einer anderen Form gerechnet.</translation>
    </message>
    <message>
        <source>The mass is from memory, not from a publication.</source>
        <translation>Die Masse ist aus dem Gedächtnis, nicht aus einer Veröffentlichung.</translation>
    </message>
    <message>
        <source>The comma could mean thousands or decimals.</source>
        <translation>Das Komma könnte Tausender oder Dezimalen meinen.</translation>
    </message>
    <message>
        <source>From one amount to another; the lower counts.</source>
        <translation>Von einer Menge bis zu einer anderen; die kleinere zählt.</translation>
    </message>
    <message>
        <source>This measure differs from country to country; the household&apos;s was taken.</source>
        <translation>Dieses Maß ist von Land zu Land verschieden; das des Haushalts wurde genommen.</translation>
    </message>
    <message>
        <source>No size is said; the usual one was taken.</source>
        <translation>Es ist keine Größe genannt; die übliche wurde genommen.</translation>
    </message>
    <message>
        <source>Only the first of the alternatives was read.</source>
        <translation>Nur die erste der Möglichkeiten wurde gelesen.</translation>
    </message>
    <message>
        <source>There is nothing in the line.</source>
        <translation>In der Zeile steht nichts.</translation>
    </message>
    <message>
        <source>Not sure.</source>
        <translation>Nicht sicher.</translation>
    </message>
</context>
<context>
    <name>suppertide::Joined</name>
    <message>
        <source>%1 and %2</source>
        <translation>%1 und %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
</context>
<context>
    <name>suppertide::KitchenChoices</name>
    <message>
        <source>Counter</source>
        <translation>Arbeitsfläche</translation>
    </message>
    <message>
        <source>Proofing box</source>
        <translation>Gärbox</translation>
    </message>
    <message>
        <source>Oven, light on</source>
        <translation>Ofen, Licht an</translation>
    </message>
    <message>
        <source>Fridge</source>
        <translation>Kühlschrank</translation>
    </message>
    <message>
        <source>Freezer</source>
        <translation>Gefrierfach</translation>
    </message>
    <message>
        <source>Cellar</source>
        <translation>Keller</translation>
    </message>
    <message>
        <source>Warming drawer</source>
        <translation>Wärmeschublade</translation>
    </message>
    <message>
        <source>No limits are known</source>
        <translation>Keine Grenzen bekannt</translation>
    </message>
    <message>
        <source>Keeps at room temperature</source>
        <translation>Hält sich bei Raumtemperatur</translation>
    </message>
    <message>
        <source>Whole meat</source>
        <translation>Fleisch am Stück</translation>
    </message>
    <message>
        <source>Ground meat</source>
        <translation>Hackfleisch</translation>
    </message>
    <message>
        <source>Poultry</source>
        <translation>Geflügel</translation>
    </message>
    <message>
        <source>Ground poultry</source>
        <translation>Gehacktes Geflügel</translation>
    </message>
    <message>
        <source>Stuffing</source>
        <translation>Füllung</translation>
    </message>
    <message>
        <source>Raw ham</source>
        <translation>Roher Schinken</translation>
    </message>
    <message>
        <source>Cooked ham in its pack</source>
        <translation>Gekochter Schinken in der Packung</translation>
    </message>
    <message>
        <source>Other cooked ham</source>
        <translation>Anderer gekochter Schinken</translation>
    </message>
    <message>
        <source>Egg dish</source>
        <translation>Eiergericht</translation>
    </message>
    <message>
        <source>Cooked dishes, heated again</source>
        <translation>Gekochtes, wieder erhitzt</translation>
    </message>
    <message>
        <source>Fish</source>
        <translation>Fisch</translation>
    </message>
    <message>
        <source>Vegetables, grains, legumes</source>
        <translation>Gemüse, Getreide, Hülsenfrüchte</translation>
    </message>
    <message>
        <source>Eaten cold and kept cold</source>
        <translation>Kalt gegessen und kalt gehalten</translation>
    </message>
    <message>
        <source>Not said</source>
        <translation>Nicht gesagt</translation>
    </message>
    <message>
        <source>Bread</source>
        <translation>Brot</translation>
    </message>
    <message>
        <source>Custard</source>
        <translation>Eiercreme</translation>
    </message>
    <message>
        <source>Sponge cake</source>
        <translation>Biskuit</translation>
    </message>
    <message>
        <source>Pastry</source>
        <translation>Gebäck</translation>
    </message>
    <message>
        <source>Casserole</source>
        <translation>Auflauf</translation>
    </message>
    <message>
        <source>Roast</source>
        <translation>Braten</translation>
    </message>
    <message>
        <source>Vegetables</source>
        <translation>Gemüse</translation>
    </message>
    <message>
        <source>Hot</source>
        <translation>Heiß</translation>
    </message>
    <message>
        <source>Warm</source>
        <translation>Warm</translation>
    </message>
    <message>
        <source>Room temperature</source>
        <translation>Raumtemperatur</translation>
    </message>
    <message>
        <source>Cold</source>
        <translation>Kalt</translation>
    </message>
    <message>
        <source>Mature, at room temperature</source>
        <translation>Reif, bei Raumtemperatur</translation>
    </message>
    <message>
        <source>Near its peak</source>
        <translation>Nahe am Höhepunkt</translation>
    </message>
    <message>
        <source>From the fridge</source>
        <translation>Aus dem Kühlschrank</translation>
    </message>
    <message>
        <source>In the fridge</source>
        <translation>Im Kühlschrank</translation>
    </message>
    <message>
        <source>In cold water</source>
        <translation>In kaltem Wasser</translation>
    </message>
    <message>
        <source>Microwave</source>
        <translation>Mikrowelle</translation>
    </message>
    <message>
        <source>Lean</source>
        <translation>Mager</translation>
    </message>
    <message>
        <source>Enriched</source>
        <translation>Reich</translation>
    </message>
    <message>
        <source>Flour</source>
        <translation>Mehl</translation>
    </message>
    <message>
        <source>Water</source>
        <translation>Wasser</translation>
    </message>
    <message>
        <source>Milk</source>
        <translation>Milch</translation>
    </message>
    <message>
        <source>Egg</source>
        <translation>Ei</translation>
    </message>
    <message>
        <source>Fat</source>
        <translation>Fett</translation>
    </message>
    <message>
        <source>Sugar</source>
        <translation>Zucker</translation>
    </message>
    <message>
        <source>Salt</source>
        <translation>Salz</translation>
    </message>
    <message>
        <source>Fresh yeast</source>
        <translation>Frischhefe</translation>
    </message>
    <message>
        <source>Dry yeast</source>
        <translation>Trockenhefe</translation>
    </message>
    <message>
        <source>Instant yeast</source>
        <translation>Instanthefe</translation>
    </message>
    <message>
        <source>Other</source>
        <translation>Anderes</translation>
    </message>
    <message>
        <source>Levain</source>
        <translation>Vorteig</translation>
    </message>
    <message>
        <source>Bulk</source>
        <translation>Stockgare</translation>
    </message>
    <message>
        <source>Proof</source>
        <translation>Stückgare</translation>
    </message>
    <message>
        <source>Preferment</source>
        <translation>Vorteig mit Hefe</translation>
    </message>
    <message>
        <source>Poolish</source>
        <translation>Poolish</translation>
    </message>
    <message>
        <source>Biga</source>
        <translation>Biga</translation>
    </message>
    <message>
        <source>Sponge</source>
        <translation>Hefevorteig</translation>
    </message>
    <message>
        <source>Old dough</source>
        <translation>Alter Teig</translation>
    </message>
    <message>
        <source>to taste</source>
        <translation>nach Geschmack</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>ml</source>
        <translation>ml</translation>
    </message>
    <message>
        <source>pieces</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Guests</source>
        <translation>Gäste</translation>
    </message>
    <message>
        <source>Ingredients</source>
        <translation>Zutaten</translation>
    </message>
    <message>
        <source>Dough</source>
        <translation>Teig</translation>
    </message>
    <message>
        <source>Steps</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>Waiting to be served</source>
        <translation>Warten aufs Servieren</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>Food safety</source>
        <translation>Lebensmittelsicherheit</translation>
    </message>
    <message>
        <source>Ovens</source>
        <translation>Öfen</translation>
    </message>
    <message>
        <source>Burners</source>
        <translation>Herdplatten</translation>
    </message>
    <message>
        <source>Things there are few of</source>
        <translation>Dinge, von denen es wenige gibt</translation>
    </message>
    <message>
        <source>Places</source>
        <translation>Plätze</translation>
    </message>
    <message>
        <source>Hydration</source>
        <translation>Wasser auf Mehl</translation>
    </message>
    <message>
        <source>Whole grain</source>
        <translation>Vollkorn</translation>
    </message>
    <message>
        <source>How it is kept</source>
        <translation>Wie er steht</translation>
    </message>
    <message>
        <source>Vigour</source>
        <translation>Triebkraft</translation>
    </message>
    <message>
        <source>How unsure the vigour is</source>
        <translation>Wie unsicher die Triebkraft ist</translation>
    </message>
    <message>
        <source>Last fed</source>
        <translation>Zuletzt gefüttert</translation>
    </message>
    <message>
        <source>What was seen</source>
        <translation>Was gesehen wurde</translation>
    </message>
    <message>
        <source>What was learned</source>
        <translation>Was gelernt wurde</translation>
    </message>
</context>
<context>
    <name>suppertide::KitchenDesk</name>
    <message>
        <source>Without a name yet</source>
        <translation>Noch ohne Namen</translation>
    </message>
    <message numerus="yes">
        <source>for %n, </source>
        <translation>
            <numerusform>für %n, </numerusform>
            <numerusform>für %n, </numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n steps</source>
        <translation>
            <numerusform>%n Schritt</numerusform>
            <numerusform>%n Schritte</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n ovens, </source>
        <translation>
            <numerusform>%n Ofen, </numerusform>
            <numerusform>%n Öfen, </numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n burners</source>
        <translation>
            <numerusform>%n Herdplatte</numerusform>
            <numerusform>%n Herdplatten</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 % hydration</source>
        <translation>%1 % Wasser</translation>
    </message>
</context>
<context>
    <name>suppertide::LearnedWords</name>
    <message>
        <source>Grows %1 times as fast as stated</source>
        <translation>Wächst %1-mal so schnell wie angegeben</translation>
    </message>
    <message>
        <source>Takes %1 times as long to wake</source>
        <translation>Braucht zum Aufwachen %1-mal so lange</translation>
    </message>
    <message>
        <source>%1 K colder than stated</source>
        <translation>%1 K kälter als angegeben</translation>
    </message>
    <message>
        <source>%1 K warmer than stated</source>
        <translation>%1 K wärmer als angegeben</translation>
    </message>
    <message>
        <source>Rises %1 times as fast as its composition says</source>
        <translation>Geht %1-mal so schnell, wie die Zusammensetzung sagt</translation>
    </message>
    <message>
        <source>%1.</source>
        <translation>%1.</translation>
    </message>
    <message>
        <source>%1, unless something else is behind it: what was seen does not tell them apart.</source>
        <translation>%1, wenn nicht etwas anderes dahintersteckt: Was gesehen wurde, trennt das nicht.</translation>
    </message>
    <message>
        <source>%1, but what was seen says little of it.</source>
        <translation>%1, aber was gesehen wurde, sagt wenig darüber.</translation>
    </message>
</context>
<context>
    <name>suppertide::MemberWords</name>
    <message numerus="yes">
        <source>%n of them</source>
        <translation>
            <numerusform>%n davon</numerusform>
            <numerusform>%n davon</numerusform>
        </translation>
    </message>
    <message>
        <source>holds %1</source>
        <translation>enthält %1</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>contents not known</source>
        <translation>Inhalt nicht bekannt</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>may be left out</source>
        <translation>darf entfallen</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message numerus="yes">
        <source>%n racks</source>
        <translation>
            <numerusform>%n Einschub</numerusform>
            <numerusform>%n Einschübe</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n readings</source>
        <translation>
            <numerusform>%n Messung</numerusform>
            <numerusform>%n Messungen</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 l</source>
        <translation>%1 l</translation>
    </message>
    <message>
        <source>Fed %1, 1:%2:%3</source>
        <translation>Gefüttert %1, 1:%2:%3</translation>
    </message>
    <message>
        <source>Dough of %1</source>
        <translation>Teig von %1</translation>
    </message>
    <message>
        <source>after %1</source>
        <translation>nach %1</translation>
    </message>
    <message>
        <source>stood highest</source>
        <translation>stand am höchsten</translation>
    </message>
    <message>
        <source>a dent springs back</source>
        <translation>eine Delle springt zurück</translation>
    </message>
    <message>
        <source>a dent fills slowly</source>
        <translation>eine Delle füllt sich langsam</translation>
    </message>
    <message>
        <source>a dent stays</source>
        <translation>eine Delle bleibt</translation>
    </message>
    <message>
        <source>called ready</source>
        <translation>reif genannt</translation>
    </message>
    <message>
        <source>%1 times as high</source>
        <translation>%1-mal so hoch</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>%1 % %2</source>
        <translation>%1 % %2</translation>
    </message>
    <message>
        <source>%1, at most %2</source>
        <translation>%1, höchstens %2</translation>
    </message>
</context>
<context>
    <name>suppertide::MenuWords</name>
    <message>
        <source>would rather not</source>
        <translation>lieber nicht</translation>
    </message>
    <message>
        <source>not even traces</source>
        <translation>nicht einmal Spuren</translation>
    </message>
    <message>
        <source>does not eat it</source>
        <translation>isst es nicht</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <extracomment>A need of a guest and how strictly it is meant: &quot;gluten: not even traces&quot;.</extracomment>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>; </source>
        <translation>; </translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>%1 and %2 more</source>
        <translation>%1 und %2 weitere</translation>
    </message>
    <message>
        <source>Not for %1</source>
        <translation>Nicht für %1</translation>
    </message>
    <message>
        <source>Not for %1: %2</source>
        <translation>Nicht für %1: %2</translation>
    </message>
    <message>
        <source>%1 would rather not</source>
        <translation>%1 lieber nicht</translation>
    </message>
    <message>
        <source>%1 would rather not: %2</source>
        <translation>%1 lieber nicht: %2</translation>
    </message>
    <message>
        <source>Ask %1</source>
        <translation>%1 fragen</translation>
    </message>
    <message>
        <source>Ask %1 about %2</source>
        <translation>%1 nach %2 fragen</translation>
    </message>
    <message>
        <source>Not known whether it suits %1</source>
        <translation>Nicht bekannt, ob es zu %1 passt</translation>
    </message>
    <message>
        <source>Not known whether it suits %1: read the label of %2</source>
        <translation>Nicht bekannt, ob es zu %1 passt: Lesen Sie das Etikett von %2</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>The whole menu</source>
        <translation>Das ganze Menü</translation>
    </message>
    <message>
        <source>%1: %2 of %3 is far less than these guests usually eat (%4).</source>
        <translation>%1: %2 %3 ist viel weniger, als diese Gäste üblicherweise essen (%4).</translation>
    </message>
    <message>
        <source>%1: %2 of %3 is far more than these guests usually eat (%4).</source>
        <translation>%1: %2 %3 ist viel mehr, als diese Gäste üblicherweise essen (%4).</translation>
    </message>
    <message>
        <source>%1 has nothing to eat at “%2”.</source>
        <translation>%1 hat bei „%2“ nichts zu essen.</translation>
    </message>
    <message>
        <source>Nothing at “%2” is known to suit %1: read the labels and ask.</source>
        <translation>Bei „%2“ ist von nichts bekannt, dass es zu %1 passt: Lesen Sie die Etiketten, und fragen Sie.</translation>
    </message>
    <message>
        <source>“%1” of %2 was only looked for in the names of ingredients.</source>
        <translation>Nach „%1“ von %2 wurde nur in den Namen der Zutaten gesucht.</translation>
    </message>
    <message>
        <source>%1: not even traces of %2. Dishes free of it get clean tools and an oven of their own; the plan keeps them apart.</source>
        <translation>%1: nicht einmal Spuren von %2. Gerichte ohne das bekommen sauberes Gerät und einen eigenen Ofen; der Plan hält sie getrennt.</translation>
    </message>
    <message>
        <source>%1: %2 usually holds %3, and its recipe does not say so.</source>
        <translation>%1: %2 enthält üblicherweise %3, und das Rezept sagt es nicht.</translation>
    </message>
</context>
<context>
    <name>suppertide::MoveWords</name>
    <message>
        <source>not planned</source>
        <translation>nicht geplant</translation>
    </message>
    <message>
        <source>%1 instead of %2</source>
        <translation>%1 statt %2</translation>
    </message>
    <message>
        <source>%1 later</source>
        <translation>%1 später</translation>
    </message>
    <message>
        <source>%1 earlier</source>
        <translation>%1 früher</translation>
    </message>
    <message>
        <source>until %1</source>
        <translation>bis %1</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>The burners</source>
        <translation>Die Herdplatten</translation>
    </message>
    <message>
        <source>As it was reported.</source>
        <translation>Wie gemeldet.</translation>
    </message>
    <message>
        <source>Goes with %1.</source>
        <translation>Geht mit %1 mit.</translation>
    </message>
    <message>
        <source>Goes with its dish.</source>
        <translation>Geht mit seinem Gericht mit.</translation>
    </message>
    <message>
        <source>%1 is busy then with %2.</source>
        <translation>%1 ist dann mit %2 beschäftigt.</translation>
    </message>
    <message>
        <source>%1 is away then.</source>
        <translation>%1 ist dann weg.</translation>
    </message>
    <message>
        <source>%1 is taken then by %2.</source>
        <translation>%1 ist dann durch %2 belegt.</translation>
    </message>
    <message>
        <source>%1 is not to be had then.</source>
        <translation>%1 ist dann nicht zu haben.</translation>
    </message>
    <message>
        <source>%1: in use then for %2.</source>
        <translation>%1: dann für %2 in Gebrauch.</translation>
    </message>
    <message>
        <source>%1: in use then.</source>
        <translation>%1: dann in Gebrauch.</translation>
    </message>
    <message>
        <source>It had not begun.</source>
        <translation>Es hatte nicht begonnen.</translation>
    </message>
    <message>
        <source>It takes another time now.</source>
        <translation>Es dauert jetzt anders lange.</translation>
    </message>
    <message>
        <source>For its serving time.</source>
        <translation>Wegen seiner Servierzeit.</translation>
    </message>
    <message>
        <source>Put there by hand.</source>
        <translation>Von Hand dorthin gelegt.</translation>
    </message>
    <message>
        <source>Its dish is left out.</source>
        <translation>Sein Gericht entfällt.</translation>
    </message>
    <message>
        <source>Its dish is planned anew.</source>
        <translation>Sein Gericht ist neu geplant.</translation>
    </message>
    <message>
        <source>Its dish is new.</source>
        <translation>Sein Gericht ist neu.</translation>
    </message>
    <message>
        <source>Makes room for others.</source>
        <translation>Macht anderen Platz.</translation>
    </message>
</context>
<context>
    <name>suppertide::Notifier</name>
    <message>
        <source>Show</source>
        <translation>Zeigen</translation>
    </message>
    <message>
        <source>Seen to</source>
        <translation>Erledigt</translation>
    </message>
    <message>
        <source>In 10 min</source>
        <translation>In 10 min</translation>
    </message>
</context>
<context>
    <name>suppertide::Options</name>
    <message>
        <source>Server to connect to: a saved server&apos;s name, HOST:PORT or unix:/PATH. Without it: the saved server used last.</source>
        <translation>Server für die Verbindung: Name eines gespeicherten Servers, HOST:PORT oder unix:/PFAD. Sonst: der zuletzt benutzte gespeicherte Server.</translation>
    </message>
    <message>
        <source>Id of the household, with a target.</source>
        <translation>Kennung des Haushalts, zusammen mit einem Ziel.</translation>
    </message>
    <message>
        <source>File that holds this device&apos;s token, with a target.</source>
        <translation>Datei mit dem Schlüssel dieses Geräts, zusammen mit einem Ziel.</translation>
    </message>
    <message>
        <source>File with the certificate to trust for this server.</source>
        <translation>Datei mit dem Zertifikat, dem für diesen Server getraut wird.</translation>
    </message>
    <message>
        <source>Id of the event to show. Without it: the nearest.</source>
        <translation>Kennung des Anlasses, der gezeigt wird. Sonst: der nächste.</translation>
    </message>
    <message>
        <source>light or dark. Without it: as the system.</source>
        <translation>light (hell) oder dark (dunkel). Sonst: wie das System.</translation>
    </message>
    <message>
        <source>en or de, for this time. Without it: as chosen under Household, or the system&apos;s.</source>
        <translation>en oder de, für dieses Mal. Sonst: wie unter „Haushalt“ gewählt, oder die des Systems.</translation>
    </message>
    <message>
        <source>Size of the window, 1280x800 by default.</source>
        <translation>Größe des Fensters, sonst 1280x800.</translation>
    </message>
    <message>
        <source>Where to look first: all, now or serving.</source>
        <translation>Wohin zuerst geschaut wird: all (alles), now (jetzt) oder serving (Servieren).</translation>
    </message>
    <message>
        <source>Screen to begin with, timeline by default.</source>
        <translation>Bereich, mit dem begonnen wird, sonst timeline (Zeitplan).</translation>
    </message>
    <message>
        <source>Open the details of this step (dish/step).</source>
        <translation>Öffnet die Einzelheiten dieses Schritts (Gericht/Schritt).</translation>
    </message>
    <message>
        <source>Show this time as now, in place of the clock&apos;s: 2026-06-20T14:05:00+01:00.</source>
        <translation>Zeigt diese Zeit als jetzt, anstelle der Uhr: 2026-06-20T14:05:00+01:00.</translation>
    </message>
    <message>
        <source>Write a picture of the window to this PNG file and exit; needs no display.</source>
        <translation>Schreibt ein Bild des Fensters in diese PNG-Datei und endet; braucht keinen Bildschirm.</translation>
    </message>
    <message>
        <source>Shows a household&apos;s shared timeline, live. The household joined last is used by itself; without one the window asks.</source>
        <translation>Zeigt den gemeinsamen Zeitplan eines Haushalts, fortlaufend. Der zuletzt beigetretene Haushalt wird von selbst genommen; ohne einen fragt das Fenster.</translation>
    </message>
    <message>
        <source>--theme %1: light or dark is wanted.</source>
        <translation>--theme %1: light oder dark wird erwartet.</translation>
    </message>
    <message>
        <source>--language %1: en or de is wanted.</source>
        <translation>--language %1: en oder de wird erwartet.</translation>
    </message>
    <message>
        <source>--view %1: all, now or serving is wanted.</source>
        <translation>--view %1: all, now oder serving wird erwartet.</translation>
    </message>
    <message>
        <source>--size %1: a size such as 1280x800 is wanted.</source>
        <translation>--size %1: eine Größe wie 1280x800 wird erwartet.</translation>
    </message>
    <message>
        <source>--at %1: a time such as 2026-06-20T14:05:00+01:00 is wanted.</source>
        <translation>--at %1: eine Zeit wie 2026-06-20T14:05:00+01:00 wird erwartet.</translation>
    </message>
    <message>
        <source>--token-file: --server and --household are wanted with it.</source>
        <translation>--token-file: dazu werden --server und --household erwartet.</translation>
    </message>
    <message>
        <source>--token-file: can&apos;t read %1</source>
        <translation>--token-file: %1 lässt sich nicht lesen</translation>
    </message>
    <message>
        <source>--certificate: can&apos;t read %1</source>
        <translation>--certificate: %1 lässt sich nicht lesen</translation>
    </message>
    <message>
        <source>No server is saved under the name %1.</source>
        <translation>Unter dem Namen %1 ist kein Server gespeichert.</translation>
    </message>
    <message>
        <source>%1: not an option (see --help)</source>
        <translation>%1: keine Option (siehe --help)</translation>
    </message>
    <message>
        <source>Id of a recipe, kitchen or starter to open; with --screen kitchen.</source>
        <translation>Kennung eines Rezepts, einer Küche oder eines Starters, die zu öffnen ist; mit --screen kitchen.</translation>
    </message>
</context>
<context>
    <name>suppertide::OvenFit</name>
    <message>
        <source>The curve misses the readings by %1 K on average; the usual oven would miss them by %2 K.</source>
        <translation>Die Kurve verfehlt die Messungen im Mittel um %1 K; der übliche Ofen würde sie um %2 K verfehlen.</translation>
    </message>
    <message numerus="yes">
        <source>%n readings are too far from the others and do not count.</source>
        <translation>
            <numerusform>%n Messung liegt zu weit von den anderen und zählt nicht.</numerusform>
            <numerusform>%n Messungen liegen zu weit von den anderen und zählen nicht.</numerusform>
        </translation>
    </message>
    <message>
        <source>No readings yet: plans count on a usual oven. Read a thermometer in the oven every few minutes while it heats, and write it down here.</source>
        <translation>Noch keine Messungen: Pläne rechnen mit einem üblichen Ofen. Lesen Sie beim Aufheizen alle paar Minuten ein Thermometer im Ofen ab, und schreiben Sie es hier auf.</translation>
    </message>
    <message>
        <source>From cold to %1: %2.</source>
        <translation>Von kalt auf %1: %2.</translation>
    </message>
    <message>
        <source>From cold to %1: %2 (a usual oven: %3).</source>
        <translation>Von kalt auf %1: %2 (ein üblicher Ofen: %3).</translation>
    </message>
    <message>
        <source>%1 min</source>
        <translation>%1 min</translation>
    </message>
</context>
<context>
    <name>suppertide::OvensController</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>out at %1</source>
        <translation>heraus um %1</translation>
    </message>
    <message>
        <source>Off</source>
        <translation>Aus</translation>
    </message>
    <message>
        <source>Heating to %1, hot at %2</source>
        <translation>Heizt auf %1, heiß um %2</translation>
    </message>
    <message>
        <source>Cooling to %1, ready at %2</source>
        <translation>Kühlt auf %1, so weit um %2</translation>
    </message>
    <message>
        <source>Light only, dough is proofing until %1</source>
        <translation>Nur Licht, Teig geht bis %1</translation>
    </message>
    <message>
        <source>Set to %1 until %2</source>
        <translation>Auf %1 gestellt bis %2</translation>
    </message>
    <message>
        <source>about %1 inside, estimated</source>
        <translation>innen etwa %1, geschätzt</translation>
    </message>
    <message>
        <source>cold</source>
        <translation>kalt</translation>
    </message>
    <message>
        <source>Where there is room: %1</source>
        <translation>Wo Platz ist: %1</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>What if %1 goes in at %2?</source>
        <translation>Was, wenn %1 um %2 hineinkommt?</translation>
    </message>
</context>
<context>
    <name>suppertide::PictureBuilder</name>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1 is served at %2</source>
        <translation>%1 wird um %2 serviert</translation>
    </message>
    <message>
        <source>%1, %2 late</source>
        <translation>%1, %2 zu spät</translation>
    </message>
    <message>
        <source>%1, 1 step</source>
        <translation>%1, 1 Schritt</translation>
    </message>
    <message>
        <source>%1, %2 steps</source>
        <translation>%1, %2 Schritte</translation>
    </message>
    <message>
        <source>cook</source>
        <translation>Koch oder Köchin</translation>
    </message>
    <message>
        <source>oven</source>
        <translation>Ofen</translation>
    </message>
    <message>
        <source>dough</source>
        <translation>Teig</translation>
    </message>
    <message>
        <source>Burners</source>
        <translation>Herdplatten</translation>
    </message>
    <message>
        <source>place</source>
        <translation>Platz</translation>
    </message>
    <message>
        <source>By itself</source>
        <translation>Von selbst</translation>
    </message>
    <message>
        <source>nobody is needed</source>
        <translation>niemand wird gebraucht</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Late · %1</source>
        <translation>Spät · %1</translation>
    </message>
    <message>
        <source>off, door ajar</source>
        <translation>aus, Tür angelehnt</translation>
    </message>
    <message>
        <source>light only</source>
        <translation>nur Licht</translation>
    </message>
    <message>
        <source>%1 from %2</source>
        <translation>%1 ab %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>Left out in this plan: %1.</source>
        <translation>In diesem Plan weggelassen: %1.</translation>
    </message>
</context>
<context>
    <name>suppertide::PlanRun</name>
    <message>
        <source>%1 of at most %2 s</source>
        <translation>%1 von höchstens %2 s</translation>
    </message>
    <message>
        <source>Looking for a first plan…</source>
        <translation>Suche einen ersten Plan …</translation>
    </message>
</context>
<context>
    <name>suppertide::PlanView</name>
    <message>
        <source>“%1”</source>
        <translation>„%1“</translation>
    </message>
    <message>
        <source>“%1” (%2)</source>
        <translation>„%1“ (%2)</translation>
    </message>
</context>
<context>
    <name>suppertide::Planning</name>
    <message>
        <source>Planning needs the household&apos;s server, which is away just now. Try again when it is back.</source>
        <translation>Planen braucht den Server des Haushalts, der gerade nicht da ist. Versuchen Sie es wieder, wenn er zurück ist.</translation>
    </message>
    <message>
        <source>Changed since it was planned: %1.</source>
        <translation>Seit dem Planen geändert: %1.</translation>
    </message>
    <message>
        <source>It can&apos;t be taken back any more: %1</source>
        <translation>Es lässt sich nicht mehr zurücknehmen: %1</translation>
    </message>
</context>
<context>
    <name>suppertide::QualityWords</name>
    <message>
        <source>1 dish is not fitted in yet.</source>
        <translation>1 Gericht ist noch nicht untergebracht.</translation>
    </message>
    <message>
        <source>%1 dishes are not fitted in yet.</source>
        <translation>%1 Gerichte sind noch nicht untergebracht.</translation>
    </message>
    <message>
        <source>Every dish is served, %1 late in all.</source>
        <translation>Jedes Gericht wird serviert, insgesamt %1 zu spät.</translation>
    </message>
    <message>
        <source>Every dish is served on time.</source>
        <translation>Jedes Gericht wird pünktlich serviert.</translation>
    </message>
    <message>
        <source>1 dish does not fit.</source>
        <translation>1 Gericht passt nicht.</translation>
    </message>
    <message>
        <source>%1 dishes do not fit.</source>
        <translation>%1 Gerichte passen nicht.</translation>
    </message>
    <message>
        <source>Proven best: no plan with these dishes, people and ovens is better.</source>
        <translation>Bewiesen am besten: Kein Plan mit diesen Gerichten, Leuten und Öfen ist besser.</translation>
    </message>
    <message>
        <source>how many dishes are served</source>
        <translation>wie viele Gerichte serviert werden</translation>
    </message>
    <message>
        <source>lateness</source>
        <translation>Verspätung</translation>
    </message>
    <message>
        <source>how little moves</source>
        <translation>wie wenig sich verschiebt</translation>
    </message>
    <message>
        <source>waiting and freshness</source>
        <translation>Warten und Frische</translation>
    </message>
    <message>
        <source>people&apos;s hours and shares</source>
        <translation>Stunden und Anteile der Leute</translation>
    </message>
    <message>
        <source>calm between tasks</source>
        <translation>Ruhe zwischen Aufgaben</translation>
    </message>
    <message>
        <source>empty ovens</source>
        <translation>leere Öfen</translation>
    </message>
    <message>
        <source>Now looking at %1.</source>
        <translation>Jetzt geht es um: %1.</translation>
    </message>
    <message>
        <source>Proven best: %1.</source>
        <translation>Bewiesen am besten: %1.</translation>
    </message>
    <message>
        <source>Proven best: %1. Now looking at %2.</source>
        <translation>Bewiesen am besten: %1. Jetzt geht es um: %2.</translation>
    </message>
    <message>
        <source>A longer search might serve one more dish.</source>
        <translation>Längeres Suchen könnte noch ein Gericht unterbringen.</translation>
    </message>
    <message>
        <source>A longer search might serve up to %1 more dishes.</source>
        <translation>Längeres Suchen könnte bis zu %1 weitere Gerichte unterbringen.</translation>
    </message>
    <message>
        <source>A longer search might be less late, by at most %1.</source>
        <translation>Längeres Suchen könnte höchstens %1 Verspätung sparen.</translation>
    </message>
    <message>
        <source>A longer search might move less.</source>
        <translation>Längeres Suchen könnte weniger verschieben.</translation>
    </message>
    <message>
        <source>A longer search might save waiting, at most %1 over all dishes.</source>
        <translation>Längeres Suchen könnte Warten sparen, höchstens %1 über alle Gerichte.</translation>
    </message>
    <message>
        <source>A longer search might save work at unsocial hours or share it more fairly, at most %1.</source>
        <translation>Längeres Suchen könnte Arbeit zu unguten Stunden sparen oder sie gerechter teilen, höchstens %1.</translation>
    </message>
    <message>
        <source>A longer search might leave the cooks more air between tasks.</source>
        <translation>Längeres Suchen könnte mehr Luft zwischen den Aufgaben lassen.</translation>
    </message>
    <message>
        <source>A longer search might heat an empty oven less, by at most %1.</source>
        <translation>Längeres Suchen könnte einen leeren Ofen weniger heizen, höchstens um %1.</translation>
    </message>
    <message>
        <source>1 more dish would not be served.</source>
        <translation>1 Gericht mehr würde nicht serviert.</translation>
    </message>
    <message>
        <source>%1 more dishes would not be served.</source>
        <translation>%1 Gerichte mehr würden nicht serviert.</translation>
    </message>
    <message>
        <source>%1 later in all.</source>
        <translation>Insgesamt %1 später.</translation>
    </message>
    <message>
        <source>%1 more waiting or off its best.</source>
        <translation>%1 mehr Warten oder nicht mehr am besten.</translation>
    </message>
    <message>
        <source>%1 more at unsocial hours or beyond a fair share.</source>
        <translation>%1 mehr zu unguten Stunden oder über den gerechten Anteil.</translation>
    </message>
    <message>
        <source>Less air between tasks.</source>
        <translation>Weniger Luft zwischen den Aufgaben.</translation>
    </message>
    <message>
        <source>%1 more of empty oven.</source>
        <translation>%1 mehr leerer Ofen.</translation>
    </message>
    <message>
        <source>1 more dish is served.</source>
        <translation>1 Gericht mehr wird serviert.</translation>
    </message>
    <message>
        <source>%1 more dishes are served.</source>
        <translation>%1 Gerichte mehr werden serviert.</translation>
    </message>
    <message>
        <source>%1 less late in all.</source>
        <translation>Insgesamt %1 weniger Verspätung.</translation>
    </message>
    <message>
        <source>%1 less waiting or off its best.</source>
        <translation>%1 weniger Warten oder nicht mehr am besten.</translation>
    </message>
    <message>
        <source>%1 less at unsocial hours or beyond a fair share.</source>
        <translation>%1 weniger zu unguten Stunden oder über den gerechten Anteil.</translation>
    </message>
    <message>
        <source>More air between tasks.</source>
        <translation>Mehr Luft zwischen den Aufgaben.</translation>
    </message>
    <message>
        <source>%1 less of empty oven.</source>
        <translation>%1 weniger leerer Ofen.</translation>
    </message>
    <message>
        <source>How much better a plan might be is not known.</source>
        <translation>Wie viel besser ein Plan sein könnte, ist nicht bekannt.</translation>
    </message>
</context>
<context>
    <name>suppertide::RackWords</name>
    <message>
        <source>May fit: try it with the cold pans first.</source>
        <translation>Passt vielleicht: vorher mit den kalten Formen ausprobieren.</translation>
    </message>
    <message>
        <source>%1 together may fit: try it with the cold pans first. The plan does not count on it.</source>
        <translation>%1 passen vielleicht zusammen hinein: vorher mit den kalten Formen ausprobieren. Der Plan rechnet nicht damit.</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>All pans of %1 at once may fit: try it with the cold pans first. The plan does not count on it.</source>
        <translation>Alle Formen von %1 passen vielleicht auf einmal hinein: vorher kalt ausprobieren. Der Plan rechnet nicht damit.</translation>
    </message>
</context>
<context>
    <name>suppertide::ReasonWords</name>
    <message>
        <source>“%1”</source>
        <translation>„%1“</translation>
    </message>
    <message>
        <source>“%1” (%2)</source>
        <translation>„%1“ (%2)</translation>
    </message>
    <message>
        <source>%1 is busy before and after.</source>
        <translation>%1 ist davor und danach beschäftigt.</translation>
    </message>
    <message>
        <source>%1 is busy with %2 afterwards.</source>
        <translation>%1 ist danach mit %2 beschäftigt.</translation>
    </message>
    <message>
        <source>%1 is busy with %2 until then.</source>
        <translation>%1 ist bis dahin mit %2 beschäftigt.</translation>
    </message>
    <message>
        <source>%1: in use otherwise.</source>
        <translation>%1: anderweitig in Gebrauch.</translation>
    </message>
    <message>
        <source>%1: in use for %2 afterwards.</source>
        <translation>%1: danach für %2 in Gebrauch.</translation>
    </message>
    <message>
        <source>%1: in use for %2 until then.</source>
        <translation>%1: bis dahin für %2 in Gebrauch.</translation>
    </message>
    <message>
        <source>%1 has another temperature before and after.</source>
        <translation>%1 hat davor und danach eine andere Temperatur.</translation>
    </message>
    <message>
        <source>another temperature</source>
        <translation>eine andere Temperatur</translation>
    </message>
    <message>
        <source>Beside %1, which needs %2 in %3.</source>
        <translation>Neben %1; das braucht %2 in %3.</translation>
    </message>
    <message>
        <source>Before %1, which needs %2 in %3.</source>
        <translation>Vor %1; das braucht %2 in %3.</translation>
    </message>
    <message>
        <source>After %1, which needs %2 in %3.</source>
        <translation>Nach %1; das braucht %2 in %3.</translation>
    </message>
    <message>
        <source>The burners</source>
        <translation>Die Herdplatten</translation>
    </message>
    <message>
        <source>In time for “%1”.</source>
        <translation>Rechtzeitig für „%1“.</translation>
    </message>
    <message>
        <source>Right after the step before it.</source>
        <translation>Gleich nach dem Schritt davor.</translation>
    </message>
    <message>
        <source>Before %1.</source>
        <translation>Vor %1.</translation>
    </message>
    <message>
        <source>After %1.</source>
        <translation>Nach %1.</translation>
    </message>
    <message>
        <source>Close to %1: they must not be far apart.</source>
        <translation>Nah bei %1: Sie dürfen nicht weit auseinander liegen.</translation>
    </message>
    <message>
        <source>Must not be far from its next step.</source>
        <translation>Darf nicht weit vor dem nächsten Schritt liegen.</translation>
    </message>
    <message>
        <source>%1 is ready then.</source>
        <translation>%1 ist dann so weit.</translation>
    </message>
    <message>
        <source>The dough is ready then.</source>
        <translation>Der Teig ist dann so weit.</translation>
    </message>
    <message>
        <source>The cook</source>
        <translation>Wer kocht,</translation>
    </message>
    <message>
        <source>%1 is away or asleep otherwise.</source>
        <translation>%1 ist sonst weg oder schläft.</translation>
    </message>
    <message>
        <source>the oven</source>
        <translation>dem Ofen</translation>
    </message>
    <message>
        <source>No rack free in %1 beside %2.</source>
        <translation>Kein Einschub frei in %1 neben %2.</translation>
    </message>
    <message>
        <source>No rack free in %1.</source>
        <translation>Kein Einschub frei in %1.</translation>
    </message>
    <message>
        <source>What it needs</source>
        <translation>Was es braucht</translation>
    </message>
    <message>
        <source>A food-safety limit on time holds it there.</source>
        <translation>Eine Zeitgrenze der Lebensmittelsicherheit hält es dort.</translation>
    </message>
    <message>
        <source>Kept apart from what a guest must not have.</source>
        <translation>Getrennt von dem, was ein Gast nicht haben darf.</translation>
    </message>
    <message>
        <source>Kept apart from what a guest must not have: before %1.</source>
        <translation>Getrennt von dem, was ein Gast nicht haben darf: vor %1.</translation>
    </message>
    <message>
        <source>Kept apart from what a guest must not have: after %1.</source>
        <translation>Getrennt von dem, was ein Gast nicht haben darf: nach %1.</translation>
    </message>
    <message>
        <source>Fixed by hand.</source>
        <translation>Von Hand festgelegt.</translation>
    </message>
    <message>
        <source>The best time for it.</source>
        <translation>Die beste Zeit dafür.</translation>
    </message>
    <message>
        <source>Not sure to fit into %1 beside %2. %3</source>
        <translation>Ob es neben %2 in %1 passt, ist nicht sicher. %3</translation>
    </message>
</context>
<context>
    <name>suppertide::RemedyModel</name>
    <message>
        <source>No other step moves.</source>
        <translation>Kein anderer Schritt verschiebt sich.</translation>
    </message>
    <message>
        <source>1 step stands elsewhere.</source>
        <translation>1 Schritt liegt anders.</translation>
    </message>
    <message>
        <source>%1 steps stand elsewhere.</source>
        <translation>%1 Schritte liegen anders.</translation>
    </message>
</context>
<context>
    <name>suppertide::RemedySearch</name>
    <message>
        <source>Looking for what would help…</source>
        <translation>Suche, was helfen würde …</translation>
    </message>
    <message>
        <source>%1 of %2 changes tried, %3 help</source>
        <translation>%1 von %2 Änderungen versucht, %3 helfen</translation>
    </message>
    <message>
        <source>Every dish fits in time: plan again, a longer search finds how.</source>
        <translation>Jedes Gericht passt rechtzeitig: Planen Sie noch einmal, längeres Suchen findet wie.</translation>
    </message>
    <message>
        <source>No change that was tried makes every dish fit.</source>
        <translation>Keine versuchte Änderung bringt jedes Gericht unter.</translation>
    </message>
    <message>
        <source>Each was planned to the minute and keeps every rule.</source>
        <translation>Jede wurde auf die Minute geplant und hält jede Regel ein.</translation>
    </message>
    <message>
        <source>Only a host may change the event. Show them this.</source>
        <translation>Nur ein Gastgeber darf den Anlass ändern. Zeigen Sie das dort.</translation>
    </message>
    <message>
        <source>Somebody changed the event meanwhile. Look again for what helps now.</source>
        <translation>Jemand hat den Anlass inzwischen geändert. Suchen Sie noch einmal, was jetzt hilft.</translation>
    </message>
</context>
<context>
    <name>suppertide::RemedyWords</name>
    <message>
        <source>%1.</source>
        <translation>%1.</translation>
    </message>
    <message>
        <source>let %1 be anywhere from %2 to %3</source>
        <translation>%1 irgendwo zwischen %2 und %3 zulassen</translation>
    </message>
    <message>
        <source>let %1 go into another oven than %2</source>
        <translation>%1 in einen anderen Ofen als %2 lassen</translation>
    </message>
    <message>
        <source>let %1 slow down in the fridge</source>
        <translation>%1 im Kühlschrank langsamer gehen lassen</translation>
    </message>
    <message>
        <source>ask %1 to cook, too</source>
        <translation>%1 bitten, mitzukochen</translation>
    </message>
    <message>
        <source>leave out %1</source>
        <translation>%1 weglassen</translation>
    </message>
    <message>
        <source>ask %1 for up to %2 more at either end of their hours</source>
        <translation>%1 um bis zu %2 mehr an einem Ende der Stunden bitten</translation>
    </message>
    <message>
        <source>leave %1 to the planner</source>
        <translation>%1 dem Plan überlassen</translation>
    </message>
    <message>
        <source>a change this program has no words for</source>
        <translation>eine Änderung, für die dieses Programm keine Worte hat</translation>
    </message>
    <message>
        <source>let %1 be ready earlier and wait up to %2</source>
        <translation>%1 früher fertig werden und bis zu %2 warten lassen</translation>
    </message>
    <message>
        <source>bake %1 hours ahead and warm it through before serving</source>
        <translation>%1 Stunden vorher backen und vor dem Servieren durchwärmen</translation>
    </message>
    <message>
        <source>build the levain of %1 at %2</source>
        <translation>den Vorteig von %1 mit %2 ansetzen</translation>
    </message>
    <message>
        <source>build the levain of %1 at another ratio</source>
        <translation>den Vorteig von %1 in anderem Verhältnis ansetzen</translation>
    </message>
    <message>
        <source>serve %1 %2 later, at %3</source>
        <translation>%1 %2 später servieren, um %3</translation>
    </message>
    <message>
        <source>serve %1 %2 later</source>
        <translation>%1 %2 später servieren</translation>
    </message>
    <message>
        <source>borrow a burner</source>
        <translation>eine Herdplatte leihen</translation>
    </message>
    <message>
        <source>borrow %1 burners</source>
        <translation>%1 Herdplatten leihen</translation>
    </message>
    <message>
        <source>find %1 l more room like %2</source>
        <translation>%1 l mehr Raum wie %2 finden</translation>
    </message>
    <message>
        <source>borrow another %1</source>
        <translation>noch einmal leihen: %1</translation>
    </message>
    <message>
        <source>%1 late</source>
        <translation>%1 zu spät</translation>
    </message>
    <message>
        <source>%1 waiting or off its best</source>
        <translation>%1 Warten oder nicht mehr am besten</translation>
    </message>
    <message>
        <source>%1 at unsocial hours or beyond a fair share</source>
        <translation>%1 zu unguten Stunden oder über den gerechten Anteil</translation>
    </message>
    <message>
        <source>%1 of empty oven</source>
        <translation>%1 leerer Ofen</translation>
    </message>
    <message>
        <source>Nothing waits and nobody is asked at a bad hour.</source>
        <translation>Nichts wartet, und niemand wird zu schlechter Stunde gebraucht.</translation>
    </message>
    <message>
        <source>%1 In time in %2 of 100 evenings.</source>
        <translation>%1 Rechtzeitig an %2 von 100 Abenden.</translation>
    </message>
    <message>
        <source>%1 In time in %2 of 100 evenings; when it is late, mostly because %3 takes longer.</source>
        <translation>%1 Rechtzeitig an %2 von 100 Abenden; sonst meist deshalb nicht, weil %3 länger dauert.</translation>
    </message>
    <message>
        <source>the others</source>
        <translation>den anderen</translation>
    </message>
    <message>
        <source>bake %1 in %2 pans of at most %3, about %4 high and filled deeper, for longer: then they stand beside %5 in the oven “%6”</source>
        <translation>%1 in %2 Formen von höchstens %3 backen, etwa %4 hoch, höher gefüllt und länger: dann stehen sie im Ofen „%6“ neben %5</translation>
    </message>
    <message>
        <source>bake %1 in a pan of at most %2, about %3 high and filled deeper, for longer: then it stands beside %4 in the oven “%5”</source>
        <translation>%1 in einer Form von höchstens %2 backen, etwa %3 hoch, höher gefüllt und länger: dann steht sie im Ofen „%5“ neben %4</translation>
    </message>
    <message>
        <source>%1 x %2 cm</source>
        <translation>%1 x %2 cm</translation>
    </message>
    <message>
        <source>%1 x %2 in</source>
        <translation>%1 x %2 Zoll</translation>
    </message>
    <message>
        <source>%1 in</source>
        <translation>%1 Zoll</translation>
    </message>
    <message>
        <source>%1 cm</source>
        <translation>%1 cm</translation>
    </message>
</context>
<context>
    <name>suppertide::ReminderWords</name>
    <message>
        <source>First thing tomorrow: %1</source>
        <translation>Morgen zuerst: %1</translation>
    </message>
    <message>
        <source>First thing today: %1</source>
        <translation>Heute zuerst: %1</translation>
    </message>
    <message>
        <source>At %1: %2</source>
        <extracomment>A time of day, and what is to be done then.</extracomment>
        <translation>Um %1: %2</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <extracomment>An oven by its name, and a temperature.</extracomment>
        <translation>%1 auf %2</translation>
    </message>
    <message>
        <source>Look at the dough: %1</source>
        <translation>Nach dem Teig sehen: %1</translation>
    </message>
    <message>
        <source>Take out: %1</source>
        <translation>Herausnehmen: %1</translation>
    </message>
    <message>
        <source>Out of the oven: %1</source>
        <translation>Aus dem Ofen: %1</translation>
    </message>
    <message>
        <source>Out of %1: %2</source>
        <extracomment>An oven by its name, and a dish.</extracomment>
        <translation>Aus %1: %2</translation>
    </message>
    <message>
        <source>Now: %1</source>
        <translation>Jetzt: %1</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <extracomment>A dish, and a time.</extracomment>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>For “%1” at %2</source>
        <translation>Für „%1“ um %2</translation>
    </message>
    <message>
        <source>It may be ready from now on.</source>
        <translation>Ab jetzt kann er reif sein.</translation>
    </message>
    <message>
        <source>Ready from now until about %1.</source>
        <translation>Reif von jetzt bis etwa %1.</translation>
    </message>
    <message>
        <source>Ready from now until about %1, at %2 times its size.</source>
        <translation>Reif von jetzt bis etwa %1, beim %2-Fachen seiner Größe.</translation>
    </message>
    <message>
        <source>From the freezer, for %1.</source>
        <translation>Aus dem Gefrierfach, für %1.</translation>
    </message>
    <message>
        <source>From the fridge, for %1.</source>
        <translation>Aus dem Kühlschrank, für %1.</translation>
    </message>
</context>
<context>
    <name>suppertide::RequestWords</name>
    <message>
        <source>“%1” begun</source>
        <translation>„%1“ begonnen</translation>
    </message>
    <message>
        <source>“%1” done</source>
        <translation>„%1“ fertig</translation>
    </message>
    <message>
        <source>“%1” left out</source>
        <translation>„%1“ ausgelassen</translation>
    </message>
    <message>
        <source>“%1” later</source>
        <translation>„%1“ später</translation>
    </message>
    <message>
        <source>“%1” handed on</source>
        <translation>„%1“ übergeben</translation>
    </message>
    <message>
        <source>“%1” taken back</source>
        <translation>„%1“ zurückgenommen</translation>
    </message>
    <message>
        <source>A note</source>
        <translation>Eine Notiz</translation>
    </message>
    <message>
        <source>“%1” looked at</source>
        <translation>„%1“ angesehen</translation>
    </message>
    <message>
        <source>New recipe “%1”</source>
        <translation>Neues Rezept „%1“</translation>
    </message>
    <message>
        <source>Recipe “%1” removed</source>
        <translation>Rezept „%1“ entfernt</translation>
    </message>
    <message>
        <source>Change of the recipe “%1”</source>
        <translation>Änderung am Rezept „%1“</translation>
    </message>
    <message>
        <source>New event “%1”</source>
        <translation>Neuer Anlass „%1“</translation>
    </message>
    <message>
        <source>Event “%1” removed</source>
        <translation>Anlass „%1“ entfernt</translation>
    </message>
    <message>
        <source>Change of the event “%1”</source>
        <translation>Änderung am Anlass „%1“</translation>
    </message>
    <message>
        <source>New kitchen “%1”</source>
        <translation>Neue Küche „%1“</translation>
    </message>
    <message>
        <source>Kitchen “%1” removed</source>
        <translation>Küche „%1“ entfernt</translation>
    </message>
    <message>
        <source>Change of the kitchen “%1”</source>
        <translation>Änderung an der Küche „%1“</translation>
    </message>
    <message>
        <source>New starter “%1”</source>
        <translation>Neuer Sauerteig „%1“</translation>
    </message>
    <message>
        <source>Starter “%1” removed</source>
        <translation>Sauerteig „%1“ entfernt</translation>
    </message>
    <message>
        <source>Change of the starter “%1”</source>
        <translation>Änderung am Sauerteig „%1“</translation>
    </message>
    <message>
        <source>Change of the household</source>
        <translation>Änderung am Haushalt</translation>
    </message>
    <message>
        <source>A change</source>
        <translation>Eine Änderung</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>“%1” takes longer</source>
        <translation>„%1“ dauert länger</translation>
    </message>
    <message>
        <source>“%1” on the shopping list</source>
        <translation>„%1“ auf der Einkaufsliste</translation>
    </message>
    <message>
        <source>A line of the shopping list ticked off</source>
        <translation>Eine Zeile der Einkaufsliste abgehakt</translation>
    </message>
    <message>
        <source>Change of the shopping list</source>
        <translation>Änderung an der Einkaufsliste</translation>
    </message>
</context>
<context>
    <name>suppertide::SafetyLimits</name>
    <message>
        <source>the food-safety limit for the heat in its middle</source>
        <translation>die Grenze der Lebensmittelsicherheit für die Hitze in der Mitte</translation>
    </message>
    <message>
        <source>the food-safety limit for its rest</source>
        <translation>die Grenze der Lebensmittelsicherheit für das Ruhen</translation>
    </message>
    <message>
        <source>the food-safety limit for the time out of fridge and heat</source>
        <translation>die Grenze der Lebensmittelsicherheit für die Zeit außerhalb von Kühlschrank und Hitze</translation>
    </message>
    <message>
        <source>the food-safety limit for keeping it hot</source>
        <translation>die Grenze der Lebensmittelsicherheit fürs Heißhalten</translation>
    </message>
    <message>
        <source>the food-safety limit for keeping it cold</source>
        <translation>die Grenze der Lebensmittelsicherheit fürs Kalthalten</translation>
    </message>
    <message>
        <source>the food-safety limit for thawing</source>
        <translation>die Grenze der Lebensmittelsicherheit fürs Auftauen</translation>
    </message>
    <message>
        <source>the food-safety limit for the time from thawed to cooking</source>
        <translation>die Grenze der Lebensmittelsicherheit für die Zeit vom Auftauen bis zum Garen</translation>
    </message>
    <message>
        <source>the food-safety limit for the time in the fridge</source>
        <translation>die Grenze der Lebensmittelsicherheit für die Zeit im Kühlschrank</translation>
    </message>
    <message>
        <source>the food-safety limit for cooling</source>
        <translation>die Grenze der Lebensmittelsicherheit fürs Abkühlen</translation>
    </message>
    <message>
        <source>the food-safety limit for reheating</source>
        <translation>die Grenze der Lebensmittelsicherheit fürs Aufwärmen</translation>
    </message>
    <message>
        <source>the food-safety limit for the heat of its oven</source>
        <translation>die Grenze der Lebensmittelsicherheit für die Hitze des Ofens</translation>
    </message>
    <message>
        <source>a food-safety limit</source>
        <translation>eine Grenze der Lebensmittelsicherheit</translation>
    </message>
</context>
<context>
    <name>suppertide::ScaledLines</name>
    <message>
        <source>Another size is worked out by the server, and there is no connection.</source>
        <translation>Eine andere Größe rechnet der Server aus, und es gibt keine Verbindung.</translation>
    </message>
    <message>
        <source>%1: %2 to %3</source>
        <translation>%1: %2 bis %3</translation>
    </message>
    <message>
        <source>; does not fit into %1</source>
        <translation>; passt nicht in %1</translation>
    </message>
    <message>
        <source>; %1: </source>
        <translation>; %1: </translation>
    </message>
    <message numerus="yes">
        <source>%n loads</source>
        <translation>
            <numerusform>%n Ladung</numerusform>
            <numerusform>%n Ladungen</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 times the recipe</source>
        <translation>%1-mal das Rezept</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message numerus="yes">
        <source>%n pieces of </source>
        <translation>
            <numerusform>%n Stück von </numerusform>
            <numerusform>%n Stück von </numerusform>
        </translation>
    </message>
    <message>
        <source>by the numbers %1</source>
        <translation>nach den Zahlen %1</translation>
    </message>
    <message>
        <source>, far off: taste, or choose another number of guests</source>
        <translation>, weit daneben: abschmecken, oder eine andere Zahl von Gästen wählen</translation>
    </message>
    <message>
        <source>, perhaps fewer: try it with the cold pans first</source>
        <translation>, vielleicht weniger: vorher mit den kalten Formen ausprobieren</translation>
    </message>
</context>
<context>
    <name>suppertide::SettledWords</name>
    <message>
        <source>“%1” (%2)</source>
        <translation>„%1“ (%2)</translation>
    </message>
    <message>
        <source>light only</source>
        <translation>nur Licht</translation>
    </message>
    <message>
        <source>%1 (%2) and %3 (%4) both wanted %5 on %6.</source>
        <translation>%1 (%2) und %3 (%4) wollten beide %5 am %6.</translation>
    </message>
    <message>
        <source>%1 goes in %2 earlier</source>
        <translation>%1 kommt %2 früher hinein</translation>
    </message>
    <message>
        <source>%1 goes in %2 later</source>
        <translation>%1 kommt %2 später hinein</translation>
    </message>
    <message>
        <source>%1 bakes in %2 instead</source>
        <translation>%1 bäckt stattdessen in %2</translation>
    </message>
    <message>
        <source>%1 bakes at %2 instead of %3</source>
        <translation>%1 bäckt bei %2 statt %3</translation>
    </message>
    <message>
        <source>they share the oven at one temperature</source>
        <translation>sie teilen den Ofen bei einer Temperatur</translation>
    </message>
    <message>
        <source>There was room for both.</source>
        <translation>Es war Platz für beide.</translation>
    </message>
    <message>
        <source>%1.</source>
        <translation>%1.</translation>
    </message>
    <message>
        <source>; </source>
        <translation>; </translation>
    </message>
</context>
<context>
    <name>suppertide::SheetPrinter</name>
    <message>
        <source>Everybody</source>
        <translation>Alle</translation>
    </message>
    <message>
        <source>Without a connection the shopping is left out.</source>
        <translation>Ohne Verbindung fehlt der Einkauf.</translation>
    </message>
    <message>
        <source>The shopping is left out: %1</source>
        <translation>Der Einkauf fehlt: %1</translation>
    </message>
    <message>
        <source>There is no plan to print.</source>
        <translation>Es gibt keinen Plan zu drucken.</translation>
    </message>
    <message>
        <source>%1 can&apos;t be written: %2</source>
        <translation>%1 lässt sich nicht schreiben: %2</translation>
    </message>
    <message>
        <source>No program was found to open it with.</source>
        <translation>Es wurde kein Programm gefunden, das sie öffnet.</translation>
    </message>
</context>
<context>
    <name>suppertide::SheetWords</name>
    <message>
        <source>%1 – %2</source>
        <extracomment>A step and its dish.</extracomment>
        <translation>%1 – %2</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>Heat to %1</source>
        <translation>Auf %1 heizen</translation>
    </message>
    <message>
        <source>Let it cool to %1</source>
        <translation>Auf %1 abkühlen lassen</translation>
    </message>
    <message>
        <source>Off, light on: dough stands in it</source>
        <translation>Aus, Licht an: Teig steht darin</translation>
    </message>
    <message>
        <source>Keep at %1</source>
        <translation>Auf %1 halten</translation>
    </message>
    <message>
        <source>%1  %2</source>
        <translation>%1  %2</translation>
    </message>
    <message>
        <source>%1, rack %2</source>
        <extracomment>Where in the oven; the racks are counted from below.</extracomment>
        <translation>%1, Schiene %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>Ovens</source>
        <translation>Öfen</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <extracomment>An oven and a day, above its program.</extracomment>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Watch the dough, not the clock.</source>
        <translation>Auf den Teig achten, nicht auf die Uhr.</translation>
    </message>
    <message>
        <source>Breads</source>
        <translation>Brote</translation>
    </message>
    <message>
        <source>Water at %1</source>
        <translation>Wasser mit %1</translation>
    </message>
    <message>
        <source>Shopping</source>
        <translation>Einkauf</translation>
    </message>
    <message>
        <source>dddd d MMMM</source>
        <extracomment>How Qt is to write a day and its date: &quot;Saturday 20 June&quot;.</extracomment>
        <translation>dddd, d. MMMM</translation>
    </message>
    <message>
        <source>For %1</source>
        <translation>Für %1</translation>
    </message>
    <message>
        <source>Any day</source>
        <translation>Irgendwann</translation>
    </message>
    <message>
        <source>Your local food-safety code and licensed practice come before this plan. Ask every guest about allergies and read the labels: the plan knows only what it was told.</source>
        <translation>Die örtlichen Vorschriften zur Lebensmittelsicherheit und zugelassene Praxis gehen diesem Plan vor. Fragen Sie jeden Gast nach Allergien und lesen Sie die Etiketten: Der Plan weiß nur, was man ihm gesagt hat.</translation>
    </message>
</context>
<context>
    <name>suppertide::ShoppingController</name>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>at hand</source>
        <translation>im Haus</translation>
    </message>
    <message>
        <source>some is at hand</source>
        <translation>etwas ist im Haus</translation>
    </message>
    <message>
        <source>more is needed than was bought</source>
        <translation>es wird mehr gebraucht, als gekauft ist</translation>
    </message>
    <message>
        <source>Any day</source>
        <translation>Irgendwann</translation>
    </message>
    <message>
        <source>For %1</source>
        <extracomment>How Qt is to write a day and its date: &quot;Saturday 20 June&quot;.</extracomment>
        <translation>Für %1</translation>
    </message>
    <message>
        <source>freezer</source>
        <translation>Gefrierfach</translation>
    </message>
    <message>
        <source>fridge</source>
        <translation>Kühlschrank</translation>
    </message>
    <message>
        <source>cellar</source>
        <translation>Keller</translation>
    </message>
    <message>
        <source>counter</source>
        <translation>Arbeitsfläche</translation>
    </message>
    <message>
        <source>from the %1 to the %2</source>
        <translation>von: %1, nach: %2</translation>
    </message>
    <message>
        <source>Once there is a plan</source>
        <translation>Sobald es einen Plan gibt</translation>
    </message>
    <message>
        <source>%1 ahead</source>
        <translation>%1 vorher</translation>
    </message>
    <message>
        <source>for %1</source>
        <translation>für %1</translation>
    </message>
    <message>
        <source>for “%1” (%2)</source>
        <translation>für „%1“ (%2)</translation>
    </message>
    <message>
        <source>whoever is there</source>
        <translation>wer da ist</translation>
    </message>
    <message>
        <source>%1 × %2</source>
        <extracomment>So many packets of that size.</extracomment>
        <translation>%1 × %2</translation>
    </message>
    <message>
        <source>dddd d MMMM</source>
        <translation>dddd, d. MMMM</translation>
    </message>
    <message>
        <source>Dishes that the plan leaves out</source>
        <translation>Gerichte, die der Plan auslässt</translation>
    </message>
</context>
<context>
    <name>suppertide::ShoppingModel</name>
    <message>
        <source>Fruit and vegetables</source>
        <translation>Obst und Gemüse</translation>
    </message>
    <message>
        <source>Meat and fish</source>
        <translation>Fleisch und Fisch</translation>
    </message>
    <message>
        <source>Milk, cheese, eggs</source>
        <translation>Milch, Käse, Eier</translation>
    </message>
    <message>
        <source>Flour and baking</source>
        <translation>Mehl und Backen</translation>
    </message>
    <message>
        <source>Dry goods</source>
        <translation>Trockenwaren</translation>
    </message>
    <message>
        <source>Spices</source>
        <translation>Gewürze</translation>
    </message>
    <message>
        <source>Frozen</source>
        <translation>Tiefgekühltes</translation>
    </message>
    <message>
        <source>Drinks</source>
        <translation>Getränke</translation>
    </message>
    <message>
        <source>Everything else</source>
        <translation>Alles andere</translation>
    </message>
</context>
<context>
    <name>suppertide::StarterController</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>suppertide::StepController</name>
    <message>
        <source>%1 (in no kitchen)</source>
        <translation>%1 (in keiner Küche)</translation>
    </message>
</context>
<context>
    <name>suppertide::StepWords</name>
    <message>
        <source>Hands-on</source>
        <translation>Handarbeit</translation>
    </message>
    <message>
        <source>Ferment</source>
        <translation>Gare</translation>
    </message>
    <message>
        <source>Oven</source>
        <translation>Ofen</translation>
    </message>
    <message>
        <source>Burner</source>
        <translation>Herd</translation>
    </message>
    <message>
        <source>Chill</source>
        <translation>Kühlen</translation>
    </message>
    <message>
        <source>Thaw</source>
        <translation>Auftauen</translation>
    </message>
    <message>
        <source>Rest</source>
        <translation>Ruhen</translation>
    </message>
    <message>
        <source>Hold</source>
        <translation>Warmhalten</translation>
    </message>
    <message>
        <source>Take out</source>
        <translation>Herausnehmen</translation>
    </message>
    <message>
        <source>Wait</source>
        <translation>Warten</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>Done.</source>
        <translation>Fertig.</translation>
    </message>
    <message>
        <source>Late: its dish is ready %1 after its time.</source>
        <translation>Spät: Das Gericht ist %1 nach seiner Zeit fertig.</translation>
    </message>
    <message>
        <source>Fixed by hand.</source>
        <translation>Von Hand festgelegt.</translation>
    </message>
    <message>
        <source>%1 for %2</source>
        <translation>%1 für %2</translation>
    </message>
    <message>
        <source>%1 at %2</source>
        <translation>%1 bei %2</translation>
    </message>
    <message>
        <source>, then </source>
        <translation>, dann </translation>
    </message>
    <message>
        <source>%1 at %2 instead of %3</source>
        <translation>%1 bei %2 statt %3</translation>
    </message>
    <message>
        <source>1 burner</source>
        <translation>1 Herdplatte</translation>
    </message>
    <message>
        <source>%1 burners</source>
        <translation>%1 Herdplatten</translation>
    </message>
    <message>
        <source>look from %1</source>
        <translation>nachsehen ab %1</translation>
    </message>
    <message>
        <source>Never ready at this place: choose a warmer one.</source>
        <translation>Wird an diesem Platz nie reif: Wählen Sie einen wärmeren.</translation>
    </message>
    <message>
        <source>Ready %1</source>
        <translation>Reif %1</translation>
    </message>
    <message>
        <source>Ready from %1</source>
        <translation>Reif ab %1</translation>
    </message>
    <message>
        <source>%1, best at %2</source>
        <translation>%1, am besten um %2</translation>
    </message>
    <message>
        <source>%1. Risen to %2 times its volume at the end.</source>
        <translation>%1. Am Ende auf das %2-Fache gegangen.</translation>
    </message>
    <message>
        <source>%1 g %2</source>
        <extracomment>A mass in grams and what is weighed: &quot;450 g rye flour&quot;.</extracomment>
        <translation>%1 g %2</translation>
    </message>
    <message>
        <source>Water at %1</source>
        <translation>Wasser mit %1</translation>
    </message>
    <message>
        <source>Starter, flour and water %1 by weight</source>
        <translation>Sauerteig, Mehl und Wasser %1 nach Gewicht</translation>
    </message>
    <message>
        <source>%1, %2 (%3)</source>
        <extracomment>Day, times, and how long in brackets.</extracomment>
        <translation>%1, %2 (%3)</translation>
    </message>
    <message>
        <source>Nobody is needed</source>
        <translation>Niemand wird gebraucht</translation>
    </message>
    <message>
        <source>None: a later end moves a serving time</source>
        <translation>Keiner: Ein späteres Ende verschiebt das Servieren</translation>
    </message>
    <message>
        <source>May end %1 later without moving a serving time</source>
        <translation>Darf %1 später enden, ohne das Servieren zu verschieben</translation>
    </message>
    <message>
        <source>%1 (load %2 of %3)</source>
        <translation>%1 (Ladung %2 von %3)</translation>
    </message>
</context>
<context>
    <name>suppertide::TaskReader</name>
    <message>
        <source>%1 left</source>
        <translation>noch %1</translation>
    </message>
    <message>
        <source>%1 over</source>
        <translation>%1 drüber</translation>
    </message>
    <message>
        <source>in %1</source>
        <translation>in %1</translation>
    </message>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>due %1 ago</source>
        <translation>seit %1 fällig</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>It&apos;s in</source>
        <translation>Ist drin</translation>
    </message>
    <message>
        <source>It&apos;s out</source>
        <translation>Ist heraus</translation>
    </message>
    <message>
        <source>It&apos;s on</source>
        <translation>Ist an</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <extracomment>A task and its dish.</extracomment>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>Nothing more to do</source>
        <translation>Nichts mehr zu tun</translation>
    </message>
    <message>
        <source>Free until %1</source>
        <translation>Frei bis %1</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <extracomment>An amount and what it is: &quot;450 g butter&quot;.</extracomment>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>from the freezer into the fridge</source>
        <translation>vom Gefrierfach in den Kühlschrank</translation>
    </message>
    <message>
        <source>out of the fridge</source>
        <translation>aus dem Kühlschrank</translation>
    </message>
    <message>
        <source>ends now</source>
        <translation>endet jetzt</translation>
    </message>
</context>
<context>
    <name>suppertide::TasksController</name>
    <message>
        <source>Nothing to do now. Next: %1, %2.</source>
        <translation>Jetzt ist nichts zu tun. Als Nächstes: %1, %2.</translation>
    </message>
    <message>
        <source>Nothing more today.</source>
        <translation>Heute nichts mehr.</translation>
    </message>
    <message>
        <source>All your tasks are done. Thank you!</source>
        <translation>Alle Ihre Aufgaben sind getan. Danke!</translation>
    </message>
</context>
<context>
    <name>suppertide::TimeWords</name>
    <message>
        <source>%1 %2</source>
        <extracomment>A short day name and a time: &quot;Sat 17:40&quot;.</extracomment>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1–%2</source>
        <translation>%1–%2</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>%1 min</source>
        <translation>%1 min</translation>
    </message>
    <message>
        <source>%1 h</source>
        <translation>%1 Std.</translation>
    </message>
    <message>
        <source>%1 h %2 min</source>
        <translation>%1 Std. %2 min</translation>
    </message>
    <message>
        <source>1 day</source>
        <translation>1 Tag</translation>
    </message>
    <message>
        <source>%1 days</source>
        <translation>%1 Tage</translation>
    </message>
    <message>
        <source>%1 %2 h</source>
        <translation>%1 %2 Std.</translation>
    </message>
    <message>
        <source>ddd d MMMM</source>
        <extracomment>How Qt is to write a short day and its date: &quot;Sat 20 June&quot;.</extracomment>
        <translation>ddd, d. MMMM</translation>
    </message>
    <message>
        <source>dddd d MMMM</source>
        <extracomment>How Qt is to write a day and its date: &quot;Saturday 20 June&quot;.</extracomment>
        <translation>dddd, d. MMMM</translation>
    </message>
</context>
<context>
    <name>suppertide::Timeline</name>
    <message>
        <source>“%1” moved</source>
        <translation>„%1“ verschoben</translation>
    </message>
    <message>
        <source>%1 steps moved</source>
        <translation>%1 Schritte verschoben</translation>
    </message>
    <message>
        <source>1 step gone</source>
        <translation>1 Schritt entfallen</translation>
    </message>
    <message>
        <source>%1 steps gone</source>
        <translation>%1 Schritte entfallen</translation>
    </message>
    <message>
        <source>New plan: %1</source>
        <translation>Neuer Plan: %1</translation>
    </message>
    <message>
        <source>%1 changed the plan: %2</source>
        <translation>%1 hat den Plan geändert: %2</translation>
    </message>
    <message>
        <source>%1 – %2</source>
        <translation>%1 – %2</translation>
    </message>
    <message>
        <source>%1, %2 later</source>
        <translation>%1, %2 später</translation>
    </message>
    <message>
        <source>%1, %2 earlier</source>
        <translation>%1, %2 früher</translation>
    </message>
</context>
<context>
    <name>suppertide::WhatIf</name>
    <message>
        <source>%1 fixed at %2</source>
        <translation>%1 festgelegt auf %2</translation>
    </message>
    <message>
        <source>%1 at %2 instead of %3</source>
        <translation>%1 bei %2 statt %3</translation>
    </message>
    <message>
        <source>%1 left to the planner</source>
        <translation>%1 dem Plan überlassen</translation>
    </message>
    <message>
        <source>Nothing else has to move.</source>
        <translation>Nichts anderes muss sich verschieben.</translation>
    </message>
    <message>
        <source>1 other step moves.</source>
        <translation>1 anderer Schritt verschiebt sich.</translation>
    </message>
    <message>
        <source>%1 other steps move.</source>
        <translation>%1 andere Schritte verschieben sich.</translation>
    </message>
    <message>
        <source>%1 does not fit any more.</source>
        <translation>%1 passt nicht mehr.</translation>
    </message>
    <message>
        <source>%1 is %2 late.</source>
        <translation>%1 ist %2 zu spät.</translation>
    </message>
    <message>
        <source>Something that is under way is kept longer than its recipe allows: look at it before you go on.</source>
        <translation>Etwas, das im Gang ist, wird länger gehalten, als sein Rezept erlaubt: Sehen Sie nach, bevor Sie weitermachen.</translation>
    </message>
    <message>
        <source>Only a host may change the plan. Show them this.</source>
        <translation>Nur ein Gastgeber darf den Plan ändern. Zeigen Sie das dort.</translation>
    </message>
</context>
<context>
    <name>suppertide::WindowApp</name>
    <message>
        <source>This computer&apos;s household can&apos;t be served: %1</source>
        <translation>Der Haushalt dieses Rechners lässt sich nicht bereitstellen: %1</translation>
    </message>
    <message>
        <source>Another window on this computer serves this household. Do it there.</source>
        <translation>Ein anderes Fenster auf diesem Computer stellt diesen Haushalt bereit. Bitte dort ändern.</translation>
    </message>
    <message>
        <source>Others can&apos;t be let in: %1</source>
        <translation>Andere können nicht hereingelassen werden: %1</translation>
    </message>
</context>
<context>
    <name>suppertide::WishWords</name>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>, kept at most %1</source>
        <translation>, höchstens %1 gehalten</translation>
    </message>
    <message>
        <source>%1 ready by %2%3</source>
        <translation>%1 fertig bis %2%3</translation>
    </message>
    <message>
        <source>%1 at %2, ready by %3%4</source>
        <translation>%1 bei %2, fertig bis %3%4</translation>
    </message>
    <message>
        <source>only one burner</source>
        <translation>nur eine Herdplatte</translation>
    </message>
    <message>
        <source>no more than %1 burners</source>
        <translation>nicht mehr als %1 Herdplatten</translation>
    </message>
    <message>
        <source>no more than %1 l of room in %2</source>
        <translation>nicht mehr als %1 l Raum in %2</translation>
    </message>
    <message>
        <source>only one %1</source>
        <translation>nur einmal: %1</translation>
    </message>
    <message>
        <source>only %1 of %2</source>
        <translation>nur %1 von %2</translation>
    </message>
    <message>
        <source>%1 not asked outside their hours</source>
        <translation>%1 nicht außerhalb der eigenen Stunden gefragt</translation>
    </message>
    <message>
        <source>%1 here only %2</source>
        <translation>%1 nur %2 hier</translation>
    </message>
    <message>
        <source>%1 fixed at %2</source>
        <translation>%1 festgelegt auf %2</translation>
    </message>
    <message>
        <source>%1 fixed at %2 by %3</source>
        <translation>%1 von %3 auf %2 festgelegt</translation>
    </message>
    <message>
        <source>%1 where it was fixed</source>
        <translation>%1, wo es festgelegt ist</translation>
    </message>
    <message>
        <source>%1 kept to %2</source>
        <translation>%1 auf %2 festgelegt</translation>
    </message>
    <message>
        <source>only one cook</source>
        <translation>nur eine Person, die kocht</translation>
    </message>
    <message>
        <source>no more than %1 cooks</source>
        <translation>nicht mehr als %1, die kochen</translation>
    </message>
    <message>
        <source>%1 cannot be ready by %2, whatever else is given up.</source>
        <translation>%1 kann bis %2 nicht fertig sein, was man auch sonst aufgibt.</translation>
    </message>
    <message>
        <source>These cannot all be had: %1.</source>
        <translation>Das geht nicht alles zugleich: %1.</translation>
    </message>
    <message>
        <source>; </source>
        <translation>; </translation>
    </message>
    <message>
        <source>%1 also has %2 to keep, and that is never given up.</source>
        <translation>%1 muss auch %2 einhalten, und das wird nie aufgegeben.</translation>
    </message>
    <message>
        <source>%1 must stay free of what a guest must not have and %2 holds. Both use %3, so never at once.</source>
        <translation>%1 muss frei bleiben von dem, was ein Gast nicht haben darf und %2 enthält. Beide brauchen %3, also nie zugleich.</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>%1 does not fit beside the other dishes.</source>
        <translation>%1 passt nicht neben die anderen Gerichte.</translation>
    </message>
    <message>
        <source>%1 was not fitted in before the search ended; a longer one may still do it.</source>
        <translation>%1 war nicht untergebracht, bevor die Suche endete; eine längere schafft es vielleicht noch.</translation>
    </message>
    <message>
        <source>%1 cannot be made even with the whole kitchen to itself</source>
        <translation>%1 geht selbst mit der ganzen Küche für sich nicht</translation>
    </message>
    <message>
        <source>%1: nothing works for %2</source>
        <translation>%1: nichts geht für %2</translation>
    </message>
    <message>
        <source>%1.</source>
        <translation>%1.</translation>
    </message>
    <message>
        <source>%1, because %2.</source>
        <translation>%1, denn %2.</translation>
    </message>
    <message>
        <source>its dough is never ready at an hour that fits</source>
        <translation>sein Teig ist nie zu einer passenden Stunde reif</translation>
    </message>
    <message>
        <source>no oven is large and hot enough for it</source>
        <translation>kein Ofen ist groß und heiß genug dafür</translation>
    </message>
    <message>
        <source>the kitchen has too little of something that it needs</source>
        <translation>die Küche hat zu wenig von etwas, das es braucht</translation>
    </message>
    <message>
        <source>no cook who can do it is there and awake long enough</source>
        <translation>niemand, der es kann, ist lange genug da und wach</translation>
    </message>
    <message>
        <source>a food-safety limit leaves its steps too little time</source>
        <translation>eine Grenze der Lebensmittelsicherheit lässt seinen Schritten zu wenig Zeit</translation>
    </message>
    <message>
        <source>it cannot be kept apart from what a guest must not have even traces of</source>
        <translation>es lässt sich nicht von dem getrennt halten, wovon ein Gast nicht einmal Spuren haben darf</translation>
    </message>
    <message>
        <source>a time that somebody fixed by hand leaves no room</source>
        <translation>eine von Hand festgelegte Zeit lässt keinen Platz</translation>
    </message>
    <message>
        <source>its steps take longer than there is time before it is served</source>
        <translation>seine Schritte dauern länger, als vor dem Servieren Zeit ist</translation>
    </message>
    <message>
        <source>%1 cannot be served any more: it would be past a food-safety limit. Put something else in its place; what has stood out too long is thrown away.</source>
        <translation>%1 kann nicht mehr serviert werden: Eine Grenze der Lebensmittelsicherheit wäre überschritten. Servieren Sie etwas anderes an seiner Stelle; was zu lange draußen stand, wird weggeworfen.</translation>
    </message>
    <message>
        <source>%1 cannot be ready any more by the latest that its course allows. Let the course be later, or put something else in its place.</source>
        <translation>%1 kann nicht mehr fertig werden, bis es der Gang spätestens erlaubt. Servieren Sie den Gang später oder etwas anderes an seiner Stelle.</translation>
    </message>
    <message>
        <source>%1 has waited too long between two of its steps to get good. Put something else in its place.</source>
        <translation>%1 hat zwischen zwei Schritten zu lange gewartet, um noch gut zu werden. Servieren Sie etwas anderes an seiner Stelle.</translation>
    </message>
    <message>
        <source>%1 has no oven, cook or place left that it could use. Find one, or put something else in its place.</source>
        <translation>Für %1 ist kein Ofen, Koch oder Platz mehr übrig. Finden Sie einen oder servieren Sie etwas anderes an seiner Stelle.</translation>
    </message>
</context>
</TS>
