<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
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
    <name>EventHeader</name>
    <message>
        <source>Suppertide</source>
        <translation>Suppertide</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Zurücknehmen</translation>
    </message>
    <message>
        <source>Undo: %1</source>
        <translation>Zurücknehmen: %1</translation>
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
    <name>InvitationPart</name>
    <message>
        <source>Invite</source>
        <translation>Einladen</translation>
    </message>
    <message>
        <source>This household&apos;s server is reached from this computer only (%1). To let phones and other computers in, run suppertide-server with --listen 0.0.0.0:50710.</source>
        <translation>Der Server dieses Haushalts ist nur von diesem Rechner aus erreichbar (%1). Damit Telefone und andere Rechner hineinkommen, starten Sie suppertide-server mit --listen 0.0.0.0:50710.</translation>
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
        <source>%1: %2</source>
        <translation>%1: %2</translation>
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
        <source>Hosts change people and their hours.</source>
        <translation>Personen und ihre Stunden ändern die Gastgeber.</translation>
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
        <source>The timeline appears here as soon as somebody has this event planned.</source>
        <translation>Der Zeitplan erscheint hier, sobald jemand diesen Anlass planen lässt.</translation>
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
    <name>suppertide::Notifier</name>
    <message>
        <source>Show</source>
        <translation>Zeigen</translation>
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
</context>
<context>
    <name>suppertide::WindowApp</name>
    <message>
        <source>This computer&apos;s household can&apos;t be served: %1</source>
        <translation>Der Haushalt dieses Rechners lässt sich nicht bereitstellen: %1</translation>
    </message>
</context>
</TS>
