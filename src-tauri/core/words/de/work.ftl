# Was die Arbeit selbst sagt: Längen, Stücke, Schritte, Zahlen, Verlauf, Fehler.
# Anrede: du, in der Befehlsform; Knöpfe und Überschriften in der Grundform.
# Namen von Stücken („Quadrat 3·5“, „Vierer A2“) stehen ohne Artikel, damit sie in jedem
# Fall passen; „Seite“ ist Vorder- oder Rückseite der Decke, „Kante“ der Rand eines Stücks.

## Längen, fürs Ohr

spoken-inches = { $whole } Zoll
spoken-fraction = { $part } Zoll
spoken-inches-fraction = { $whole } und { $part } Zoll
spoken-part-2 = { $whole ->
    [0] ein halber
   *[other] ein halb
}
spoken-part-4 = { $num ->
    [one] ein Viertel
   *[other] { $num } Viertel
}
spoken-part-8 = { $num ->
    [one] ein Achtel
   *[other] { $num } Achtel
}
spoken-part-16 = { $num ->
    [one] ein Sechzehntel
   *[other] { $num } Sechzehntel
}
spoken-part-32 = { $num ->
    [one] ein Zweiunddreißigstel
   *[other] { $num } Zweiunddreißigstel
}
spoken-part-64 = { $num ->
    [one] ein Vierundsechzigstel
   *[other] { $num } Vierundsechzigstel
}
spoken-mm = { $number } Millimeter
spoken-cm = { $number } Zentimeter
spoken-minus = minus { $length }
spoken-about = etwa { $length }
spoken-by = { $width } mal { $height }
exact = genau richtig
over = { $length } zu groß
under = { $length } zu klein
within-a-mark = auf den Strich genau
none = keine
no-fringe = keine; ungefüttert sind die Kanten auf der Rückseite zu sehen und fransen dort ein wenig
number = { $n }
far-m = { $n } m
far-yd = { $n } yd
spoken-far-m = { $n } Meter
spoken-far-yd = { $n } Yards
of = { $done } von { $all }
minutes = { $n ->
    [one] { $n } Minute
   *[other] { $n } Minuten
}

## Stücke

grid = { $across } breit × { $down } hoch
piece-square = Quadrat { $at }
piece-pair = Paar { $first } + { $second }
piece-four = Vierer { $at }
piece-row = { $of ->
    [pairs] Paarreihe { $row }
   *[fours] Viererreihe { $row }
}
piece-rows = { $n ->
    [2] Reihen { $first } und { $last }
   *[other] Reihen { $first } bis { $last }
}
piece-column = { $of ->
    [pairs] Paarspalte { $column }
   *[fours] Viererspalte { $column }
}
piece-columns = { $n ->
    [2] Spalten { $first } und { $last }
   *[other] Spalten { $first } bis { $last }
}
piece-fours = { $n ->
    [2] Vierer { $first } und { $last }
   *[other] Vierer { $first } bis { $last }
}
piece-part = Teil { $first } bis { $last }
piece-whole = Die ganze Decke
spoken-place = Reihe { $row }, Platz { $place }
spoken-square = Quadrat in { $place }
spoken-pair = Paar: { $first } mit { $second }
spoken-four = Vierer { $at }, von { $first } bis { $last }
spoken-part = Verbundenes Teil von { $first } bis { $last }
kind-square = Quadrat
kind-pair = Paar
kind-four = Vierer
kind-row = Reihe
kind-column = Spalte
kind-part = größeres Teil
kind-whole = Ganzes
count-square = { $n ->
    [one] { $n } Quadrat
   *[other] { $n } Quadrate
}
count-pair = { $n ->
    [one] { $n } Paar
   *[other] { $n } Paare
}
count-four = { $n ->
    [one] { $n } Vierer
   *[other] { $n } Vierer
}
count-row = { $n ->
    [one] { $n } Verbindung in den Reihen
   *[other] { $n } Verbindungen in den Reihen
}
count-column = { $n ->
    [one] { $n } Verbindung in den Spalten
   *[other] { $n } Verbindungen in den Spalten
}
count-part = { $n ->
    [one] { $n } größere Verbindung
   *[other] { $n } größere Verbindungen
}
count-whole = die ganze Decke

## Wo in der Arbeit: die Abschnitte

path-stage-pile = Stapel
path-stage-cut = Zuschneiden
path-stage-cover = Bekleben
path-stage-pairs = Paare
path-stage-fours = Vierer
path-stage-squared = Auf Maß
path-stage-joined = Verbinden
path-stage-bound = Einfassen
path-stage-washed = Waschen
path-through = fertig
path-now = jetzt
path-begun = angefangen
path-ahead = kommt noch
path-count = { $done } von { $all }
path-steps = { $all ->
    [one] { $done } von einem Schritt
   *[other] { $done } von { $all } Schritten
}
path-pile = { $n ->
    [0] nichts aufgeschrieben
    [one] ein Eintrag
   *[other] { $n } Einträge
}
path-said = { $stage }: { $count }
path-place = Abschnitt { $n } von { $all }
path-finished = Fertig
path-left = noch etwa { $time }
path-left-shortly = noch { $time }
path-sheet = { $place }, { $said }; { $left }

## Der Schritt

progress = { $done } von { $all } Schritten erledigt
station-any = Überall
station-table = Tisch
station-iron = Bügeln
station-machine = Nähen
station-wash = Wäsche
station-spoken = { $n ->
    [0] { $station }, nichts bereit
    [one] { $station }, ein Stück bereit
   *[other] { $station }, { $n } Stücke bereit
}
rest-station = An diesem Platz ist gerade nichts bereit ({ $station }). Sieh an einem anderen nach oder bei dem, was abkühlt.
rest-finished = Fertig. Nach Plan und allem, was unterwegs gemessen wurde, misst die Decke { $size }; wie viel sie beim Waschen eingegangen ist, zeigt sich, wenn du die ganze Decke misst. Gut gemacht.
rest-measured = { $n ->
    [0] Fertig. Die Decke misst { $size }. Gut gemacht.
    [one] Fertig. Die Decke misst nach einer Wäsche { $size }. Gut gemacht.
   *[other] Fertig. Die Decke misst nach { $n } Wäschen { $size }. Gut gemacht.
}
ask-faces = Welche Quadrate bekommen Stoff?
ask-faces-why = { $n ->
    [one] Ein Stoff steht in der Liste, und noch kein Quadrat hat ihn. Verteile die Stoffe auf beide Seiten, bevor du Quadrate verbindest: Ein verbundenes Quadrat behält seine Seiten.
   *[other] { $n } Stoffe stehen in der Liste, und noch kein Quadrat hat einen. Verteile sie auf beide Seiten, bevor du Quadrate verbindest: Ein verbundenes Quadrat behält seine Seiten.
}
ask-faces-denim = Bis jetzt ist jedes Quadrat aus „{ $denim }“: Unter „Seiten“ wählst du Quadrate und gibst ihnen einen anderen Jeansstoff.
ask-faces-bare = Alles aus Jeansstoff
noted-at = Notiert bei { $piece }: { $text }
special-measure-first = Miss zuerst die ganze Decke: Nur so lässt sich sagen, was die Wäsche mit ihr macht.
special-measure-unknown = Vor dem Waschen wurde sie nicht gemessen. Wenn du sie jetzt misst, siehst du, was die nächste Wäsche macht.
special-spare = Aus dem, was auf dem Stapel liegt, gibt es kein Quadrat aus { $denim } mehr. Nimm ein Ersatzquadrat, oder leg mehr Stoff auf den Stapel.
special-no-spare = Aus dem, was auf dem Stapel liegt, gibt es kein Quadrat aus { $denim } mehr, und kein Ersatzquadrat ist übrig. Leg mehr Stoff auf den Stapel.
special-twin-out = Nimm zuerst die Zwillingsnadel heraus und setz eine einzelne ein: Mit einer Zwillingsnadel lässt sich an Ecken nicht wenden.
how-binding-end = Leg das Ende { $over } oder etwas mehr über den Anfang, und schneide ab, was übrig ist.
special-trim-first = { $piece } ist vorher noch einmal zu schneiden, auf { $target }: Jetzt verbunden, bleibt es bei { $size }.
special-trim-again = Das Stück war schon auf { $size } geschnitten. Schneide es noch einmal, auf { $target }.
special-left-out = Nicht mit den anderen abgehakt: { $names }. Was die Maße dort sagen, siehst du dir erst einzeln an.
remain = { $done ->
    [0] Noch { $left }
   *[other] Noch { $left }, { $done } { $past }
}
remain-some-ready = Noch { $left }, { $ready } jetzt bereit
tick-this = Dieses { $past }
tick-sitting = Überlappt und gebügelt
tick-not-pressed = Überlappt, noch nicht gebügelt
first-of = das erste von { $n }
first-of-row = { $of ->
    [pairs] das erste von { $n } in Paarreihe { $row }
   *[fours] das erste von { $n } in Viererreihe { $row }
}
tick-some = { $n ->
    [one] Das andere { $past }
   *[other] Diese { $n } { $past }
}
tick-alike-denim = Alle { $n } aus { $denim } zugeschnitten
tick-alike = Diese { $n } { $past }
tick-alike-at = Diese { $n } mit { $lap } { $past }
tick-all = { $n ->
    [2] Beide { $past }
   *[other] Alle { $n } { $past }
}
tick-all-laps = Alle { $n } { $past } (verschiedene Überlappungen)
tick-unmeasured = { $of ->
    [1] { $label } (nicht gemessen)
   *[other] { $n ->
        [one] { $label } (eins nicht gemessen)
       *[other] { $label } ({ $n } nicht gemessen)
    }
}
tick-left-out = { $label }, ohne { $names }
names-and-more = { $n ->
    [one] { $names } und noch eins
   *[other] { $names } und noch { $n }
}
tick-covered = { $fabrics ->
    [one] Alle { $n } beklebt
   *[other] Alle { $n } beklebt ({ $fabrics } Stoffe)
}
tick-all-fabrics = { $fabrics ->
    [one] Alle { $n } beklebt
   *[other] Alle { $n } beklebt ({ $fabrics } Stoffe)
}
tick-all-cut-fabrics = { $fabrics ->
    [one] Alle { $n } aus einem Stoff zugeschnitten
   *[other] Alle { $n } aus { $fabrics } Stoffen zugeschnitten
}
tick-spare-other = { $n ->
    [one] Das Ersatzquadrat nehmen: { $denim }
   *[other] Eins von { $n } Ersatzquadraten nehmen: { $denim }
}
tick-spare = { $n ->
    [one] Das Ersatzquadrat nehmen
   *[other] Eins von { $n } Ersatzquadraten nehmen
}

title-cut = Quadrat zuschneiden
title-lap-halves = Zwei Hälften überlappen und kleben
title-press-halves = Überlappung der Hälften bügeln
title-cool-halves = Hälften abkühlen lassen
title-stitch-halves = Zwei Hälften zum Quadrat nähen
title-cut-fabric = Stoffquadrate zuschneiden
title-cover-front = Stoff vorn aufkleben
title-cover-back = Stoff hinten aufkleben
title-press-cover = Beklebtes Quadrat bügeln
title-cool-cover = Quadrat abkühlen lassen
title-stitch-patch = Flicken ringsum festnähen
title-dot = { $kind ->
    [pair] Paar überlappen und kleben
    [four] Zwei Paare zum Vierer überlappen
   *[other] Nächste Verbindung überlappen
}
title-press-lap = { $kind ->
    [pair] Paar bügeln
    [four] Überlappung des Vierers bügeln
   *[other] Überlappung bügeln
}
title-cool-lap = Abkühlen lassen
title-pin = { $kind ->
    [pair] Paar stecken
    [four] Zwei Paare zum Vierer stecken
   *[other] Nächste Verbindung stecken
}
title-stitch = { $kind ->
    [pair] Paar nähen
    [four] Vierer nähen
   *[other] Verbindung nähen
}
title-press-seam = Naht bügeln
title-press-block = Flach bügeln
title-square-up = Auf Maß schneiden
title-trim-edge = Ganze Kante bügeln und begradigen
title-cut-binding = Einfassstreifen schneiden
title-join-binding = Streifen zu einem verbinden
title-press-binding = Streifen falten und bügeln
title-glue-binding = Einfassung um die Kante legen
title-stitch-binding = Einfassung festnähen
title-snip = Nahtzugaben einschneiden
title-wash = Wäsche { $n } von { $all }
title-clip = Fäden abschneiden nach Wäsche { $n } von { $all }

how-cut = Schneide quer übers Hosenbein einen Streifen, so breit wie das Quadrat, und davon das Quadrat.
    Meide den Wulst der Außennaht, Säume, abgewetzte Knie und Löcher, und halte die Kante im Fadenlauf.
how-lap-halves = Dieses Quadrat wird aus zwei Hälften eines Jeansstoffs gestückelt, im gleichen Fadenlauf geschnitten.
    Zeichne die Überlappung an einer langen Kante der einen Hälfte an; sie liegt darunter.
    Setz kleine Punkte auswaschbaren Kleber innerhalb der Markierung und leg die andere Hälfte darüber, beide mit der rechten Seite nach oben, die Enden gleich. Zusammen sind sie so breit wie ein Quadrat.
how-press-halves = Leg das Bügeltuch auf die Überlappung und bügle, damit der Kleber hält: Setz das Bügeleisen auf und heb es wieder ab; schieb es nicht. Halte die Hälften in einer Linie.
how-cool-halves = Lass es flach liegen, bis es sich kühl anfühlt. Hebst du es warm an, löst sich der Kleber.
how-stitch-halves = Näh in der Mitte der Überlappung; führ die offene Kante an der Kante des Nähfußes oder an einer Führung entlang, { $middle } von der Nadel.
    Stichlänge { $long }; an beiden Enden sichern drei oder vier Stiche zurück die Naht.
    Von da an ist es ein Quadrat wie jedes andere; in seiner Mitte liegt der Jeansstoff doppelt: Näh später langsam, wo sie auf eine Überlappung trifft.
how-stitch-halves-rows = Näh zwei Reihen nacheinander in derselben Richtung: die erste { $first } von der oberen offenen Kante, die zweite { $second } von ihr.
    Stichlänge { $long }; an beiden Enden jeder Reihe sichern drei oder vier Stiche zurück die Naht.
    Von da an ist es ein Quadrat wie jedes andere; in seiner Mitte liegt der Jeansstoff doppelt: Näh später langsam, wo sie auf eine Überlappung trifft.
how-stitch-halves-zigzag = Näh so, dass die Mitte des Zickzacks in der Mitte der Überlappung läuft; führ die offene Kante an der Kante des Nähfußes oder an einer Führung entlang, { $middle } von der Mitte des Zickzacks.
    Stichlänge { $long }; an beiden Enden sichern drei oder vier Stiche zurück die Naht.
    Von da an ist es ein Quadrat wie jedes andere; in seiner Mitte liegt der Jeansstoff doppelt: Näh später langsam, wo sie auf eine Überlappung trifft.
how-stitch-halves-twin = Näh in der Mitte der Überlappung; führ die offene Kante an der Kante des Nähfußes oder an einer Führung entlang, { $middle } von der Mitte der beiden Nadeln.
    Stichlänge { $long }. Lass die Fadenenden lang, zieh sie auf eine Seite durch und verknote sie: Rückwärts näht man mit der Zwillingsnadel nicht.
    Von da an ist es ein Quadrat wie jedes andere; in seiner Mitte liegt der Jeansstoff doppelt: Näh später langsam, wo sie auf eine Überlappung trifft.
how-cut-fabric = Schneide zuerst die Stoffkanten gerade, an den Webkanten etwas mehr. Dann schneide die Quadrate so groß wie die Jeansquadrate.
how-cut-fabric-laid-on = Schneide zuerst die Stoffkanten gerade, an den Webkanten etwas mehr. Dann schneide das Stück { $side } zu: Das Quadrat ist eingenäht, und das Stück liegt frei von seinen Überlappungen.
how-cover-front = Gib ein paar Punkte auswaschbaren Kleber auf die linke Seite des Stoffquadrats, ein gutes Stück vom Rand.
    Leg es mit der rechten Seite nach oben auf die Vorderseite, Kante auf Kante.
how-cover-back = Dreh das Quadrat um. Gib ein paar Punkte auswaschbaren Kleber auf die linke Seite des Stoffquadrats, ein gutes Stück vom Rand.
    Leg es mit der rechten Seite nach oben auf die Rückseite, Kante auf Kante.
how-cover-front-patch = Gib ein paar Punkte auswaschbaren Kleber auf die linke Seite des Flickens, ein gutes Stück vom Rand.
    Leg ihn mit der rechten Seite nach oben mitten auf die Vorderseite: Ringsum bleiben { $round } Jeans frei, damit ihn keine Überlappung erfasst.
how-cover-back-patch = Dreh das Quadrat um. Gib ein paar Punkte auswaschbaren Kleber auf die linke Seite des Flickens, ein gutes Stück vom Rand.
    Leg ihn mit der rechten Seite nach oben mitten auf die Rückseite: Ringsum bleiben { $round } Jeans frei, damit ihn keine Überlappung erfasst.
how-cover-front-laid-on = Schneid den Stoff auf { $side } zu. Gib ein paar Punkte auswaschbaren Kleber auf die linke Seite des Stoffs, ein gutes Stück vom Rand.
    Leg ihn mit der rechten Seite nach oben mitten auf das Quadrat, auf die Vorderseite, frei von jeder Überlappung.
how-cover-back-laid-on = Schneid den Stoff auf { $side } zu. Dreh die Arbeit um. Gib ein paar Punkte auswaschbaren Kleber auf die linke Seite des Stoffs, ein gutes Stück vom Rand.
    Leg ihn mit der rechten Seite nach oben mitten auf das Quadrat, auf die Rückseite, frei von jeder Überlappung.
how-press-cover = Leg das Bügeltuch darauf. Setz das Bügeleisen auf und heb es wieder ab; schieb es nicht.
how-cool-cover = Lass es flach liegen, bis es sich kühl anfühlt. Hebst du es warm an, löst sich der Kleber.
how-stitch-patch = Näh den Stoff auf allen vier Seiten { $edge } vom Rand fest: Hier hält ihn keine Überlappung, und auswaschbarer Kleber löst sich bei der ersten Wäsche.
    Die Naht ist auch auf der anderen Seite zu sehen.
how-stitch-patch-twin = Setz eine einzelne Nadel ein: Mit einer Zwillingsnadel lässt sich keine Ecke nähen.
    Näh den Stoff auf allen vier Seiten { $edge } vom Rand fest: Hier hält ihn keine Überlappung, und auswaschbarer Kleber löst sich bei der ersten Wäsche.
    Die Naht ist auch auf der anderen Seite zu sehen.
how-dot = Zeichne die Überlappung an der Kante des rechten oder unteren Stücks an; es liegt darunter.
    Setz kleine Punkte auswaschbaren Kleber innerhalb der Markierung und leg das linke oder obere Stück darüber.
how-dot-at = Zeichne { $lap } an der { $side ->
        [left] linken
       *[upper] oberen
    } Kante von { $under } an; dieses Stück liegt darunter.{ $named ->
        [0] { "" }
       *[other] { " " }Nur wo hier eine andere Überlappung genannt ist, zeichne die an.
    }
    Setz kleine Punkte auswaschbaren Kleber innerhalb der Markierung und leg { $over } darüber.
how-line-up = { $n ->
    [0] Leg die Enden auf gleiche Höhe.
    [one] Bring zuerst die beiden { $joining ->
        [lapped] Überlappungen
       *[other] Nähte
    }, die sich in der Mitte treffen, in eine Linie, dann die Enden auf gleiche Höhe.
   *[other] Bring die { $joining ->
        [lapped] Überlappungen
       *[other] Nähte
    }, die sich treffen, von der Mitte nach außen in eine Linie, dann die Enden auf gleiche Höhe.
}
how-line-up-uneven = { $piece } ist { $by } länger. Bring die beiden { $joining ->
        [lapped] Überlappungen
       *[other] Nähte
    }, die sich in der Mitte treffen, in eine Linie und lass die Enden, wie sie kommen: Beim Schneiden auf Maß werden sie gleich.
how-line-up-longer = { $piece } ist { $by } länger. Bring die { $joining ->
        [lapped] Überlappungen
       *[other] Nähte
    }, die sich treffen,{ $n ->
        [one] { "" }
       *[other] { " " }von der Mitte nach außen
    } in eine Linie und lass die Enden, wie sie kommen.
how-press-lap = Leg das Bügeltuch auf die Überlappung und bügle, damit der Kleber hält: Setz das Bügeleisen auf und heb es wieder ab; schieb es nicht. Halte die Quadrate in einer Linie.
sitting-cool = Lass es liegen, wo du es gebügelt hast, bis es sich kühl anfühlt: Hebst du es warm an, löst sich der Kleber. Überlapp das Nächste daneben. Abhaken musst du nichts: Ist es kühl, kann es genäht werden.
special-mixed = Von diesem Stoff ist jedes Quadrat anders: Nimm eins, das den Nachbarn nicht gleicht.
special-short-by-laps = { $joining ->
    [lapped] Nach seinen Überlappungen wird das Stück { $size }, kleiner als { $target }, und Schneiden macht nichts größer: Miss es und sieh nach, was zu tun ist.
   *[other] Nach seinen Nahtzugaben wird das Stück { $size }, kleiner als { $target }, und Schneiden macht nichts größer: Miss es und sieh nach, was zu tun ist.
}
special-scrap-first = Näh zuerst eine Probe mit dieser { $joining ->
        [lapped] Überlappung
       *[other] Naht
    }, dieser Nadel und diesem Garn: siehe „Plan“, „Nähproben“.
special-lay-first = Leg vor der ersten { $joining ->
        [lapped] Überlappung
       *[other] Naht
    } alle Quadrate auf dem Boden aus, beschrifte jedes und staple sie Reihe für Reihe.{ $cooling ->
        [0] { "" }
       *[other] { " " }Was noch abkühlt, lass bis dahin liegen.
    }
how-cool-lap = Lass es flach liegen, bis es sich kühl anfühlt. Hebst du es warm an, löst sich der Kleber.
how-pin = Leg die beiden mit den Vorderseiten aufeinander, Kante auf Kante, und steck quer zur Kante.
how-pin-exposed = Leg die beiden mit den Rückseiten aufeinander, Kante auf Kante, und steck quer zur Kante. Die offenen Kanten bleiben zu sehen.
how-stitch-twin = Näh in der Mitte der Überlappung, jedes Mal dieselbe Seite oben; führ die offene Kante an der Kante des Nähfußes oder an einer Führung entlang, { $middle } von der Mitte der beiden Nadeln.
    Stichlänge { $long }. Lass die Fadenenden lang, zieh sie auf eine Seite durch und verknote sie: Rückwärts näht man mit der Zwillingsnadel nicht.
    Näh langsam, wo sich Überlappungen kreuzen; dreh über den dicksten Stellen das Handrad.
how-stitch-lap = Näh in der Mitte der Überlappung; führ die offene Kante an der Kante des Nähfußes oder an einer Führung entlang, { $middle } von der Nadel.
    Stichlänge { $long }; an beiden Enden sichern drei oder vier Stiche zurück die Naht.
    Näh langsam, wo sich Überlappungen kreuzen; dreh über den dicksten Stellen das Handrad.
how-stitch-lap-zigzag = Näh so, dass die Mitte des Zickzacks in der Mitte der Überlappung läuft; führ die offene Kante an der Kante des Nähfußes oder an einer Führung entlang, { $middle } von der Mitte des Zickzacks.
    Stichlänge { $long }; an beiden Enden sichern drei oder vier Stiche zurück die Naht.
    Näh langsam, wo sich Überlappungen kreuzen; dreh über den dicksten Stellen das Handrad.
how-stitch-rows = Näh zwei Reihen nacheinander, dieselbe Seite oben und in derselben Richtung: die erste { $first } von der oberen offenen Kante, die zweite { $second } von ihr.
    Führ bei der ersten diese Kante an der Kante des Nähfußes oder an einer Führung entlang, { $first } von der Nadel. Führ bei der zweiten die erste Reihe daran entlang, { $between } von der Nadel.
    Stichlänge { $long }; an beiden Enden jeder Reihe sichern drei oder vier Stiche zurück die Naht.
    Näh langsam, wo sich Überlappungen kreuzen; dreh über den dicksten Stellen das Handrad.
how-stitch-seam-rows = Näh zwei Reihen nacheinander: die erste { $second } von den offenen Kanten, die zweite { $first }; die Linie auf der Stichplatte oder eine Führung hält sie gleich.
    Zieh die Stecknadeln heraus, wenn du zu ihnen kommst.
    Stichlänge { $long }; an beiden Enden jeder Reihe drei oder vier Stiche zurück.
how-stitch-seam = Näh im Abstand der Nahtzugabe von den offenen Kanten; die Linie auf der Stichplatte oder eine Führung hält ihn gleich.
    Zieh die Stecknadeln heraus, wenn du zu ihnen kommst.
    Stichlänge { $long }; an beiden Enden drei oder vier Stiche zurück.
how-stitch-seam-wide = Näh so, dass die Mitte der Naht im Abstand der Nahtzugabe von den offenen Kanten läuft; die Linie auf der Stichplatte gilt für die Nadel in der Mitte, und sie oder eine Führung hält den Abstand gleich.
    Zieh die Stecknadeln heraus, wenn du zu ihnen kommst.
    Stichlänge { $long }; an beiden Enden drei oder vier Stiche zurück.
how-stitch-seam-twin = Näh so, dass die Mitte der beiden Reihen im Abstand der Nahtzugabe von den offenen Kanten läuft; die Linie auf der Stichplatte gilt für die Nadel in der Mitte, und sie oder eine Führung hält den Abstand gleich.
    Zieh die Stecknadeln heraus, wenn du zu ihnen kommst.
    Stichlänge { $long }. Lass die Fadenenden lang, zieh sie auf eine Seite durch und verknote sie: Rückwärts näht man mit der Zwillingsnadel nicht.
needle-single = Nadel: eine Jeansnadel, System 130/705 H, Stärke 90/14 bis 100/16. So ist es üblich; es entscheidet die Anleitung deiner Maschine.
needle-twin = Nadel: eine Zwillingsnadel mit Abstand { $spacing }, System 130/705 H: eine für Jeans, wenn es sie mit diesem Abstand gibt (meist 4 mm, Stärke 100), sonst die dickste, die es gibt. So ist es üblich; es entscheidet die Anleitung deiner Maschine.
how-press-seam = Bügle die Naht erst flach, wie sie genäht ist, dann auseinander.
    Oder bügle sie zu einer Seite: fester, aber drei Lagen dick, an Kreuzungen etwa sechs; dann die nächste Naht zur anderen Seite.
how-press-seam-wide = Bügle die Naht erst flach, wie sie genäht ist, dann zu einer Seite: Zwischen ihren Reihen bleibt sie geschlossen und lässt sich nicht auseinanderbügeln.
    Dort ist sie drei Lagen dick, an Kreuzungen etwa sechs; leg die nächste Naht zur anderen Seite.
how-press-seam-exposed = Bügle die Naht auseinander, damit beide Zugaben frei liegen, um eingeschnitten zu werden und auszufransen.
how-press-block = Bügle es von beiden Seiten flach und lass es vor dem Messen abkühlen.
how-square-up = Schneide ab, was übersteht, auf jeder Seite die Hälfte, damit die Kreuzung in der Mitte bleibt.
how-square-up-leans = Das Stück ist schief. Zieh es vor dem Schneiden sacht an der kurzen Diagonale, dämpf es flach (Bügeleisen und Dampf sind heiß: halte die Hand fern), lass es abkühlen und miss noch einmal. Was dann noch schief ist, wird geschnitten, wie es hier steht.
how-square-up-outline = Nimm von jeder Seite weg, was hier für sie steht, und nicht mehr: Es ist nicht ganz rechtwinklig, darum ist jede Seite anders.
how-square-up-measure = Miss zuerst: Jeansstoff dehnt sich am Ende einer Naht.
    Schneide ab, was übersteht, auf jeder Seite die Hälfte. Meist ist nichts zu schneiden.
how-cut-binding = Schneide alle Streifen gleich, genau so lang wie angegeben, mit geraden Seiten und rechtwinkligen Enden: Danach ist geplant, wo ihre Ansätze liegen.
how-join-binding = Leg das Ende eines Streifens so breit wie die Überlappung über den Anfang des nächsten und näh quer darüber. So weiter, bis alle ein langer Streifen sind.
how-join-binding-seam = Leg die Enden zweier Streifen rechts auf rechts, näh quer darüber und bügle die Naht auseinander (Bügeleisen und Dampf sind heiß: halte die Finger fern). So weiter, bis alle ein langer Streifen sind.
how-press-binding = Falte den Streifen der Länge nach zur Hälfte, offene Kanten aufeinander, und bügle einen scharfen Bruch.
how-trim-edge = Bügle die ganze Kante von beiden Seiten und lass sie abkühlen. Stell das Bügeleisen beiseite: Die Kante wird kalt geschnitten.
    Leg ein langes Lineal an die ganze Seite, über die Enden der Verbindungen, und sieh nach, ob die Ecken rechtwinklig sind.
    Schneide dann nur ab, was vorsteht, damit jede Seite eine gerade Linie ist. Nimm nicht mehr weg, als die Seite braucht; oft sind es ein paar Fäden oder nichts. Was du hier abschneidest, fehlt am fertigen Maß.
how-glue-binding = Leg die Decke mit der Vorderseite nach oben. Beginne an der hier angegebenen Stelle und geh im Uhrzeigersinn herum.
    Schieb die Kante der Decke bis an den Bruch in den Streifen. Halte sie dort mit Punkten aus auswaschbarem Kleber und mit Klammern fest. Nimm jede Klammer ab, bevor das Bügeleisen ihr nahe kommt, bügle und lass es abkühlen. Auf jeder Seite ist etwas weniger als die Hälfte des Streifens zu sehen: Den Rest nimmt die Kante auf.
    Falte den Streifen an jeder Ecke, wie ihre Bilder es zeigen. Leg ihn am Ende über seinen Anfang; nie über einer Kreuzung.
how-glue-binding-untrimmed = Bügle vor dem Einfassen die ganze Kante und lass sie abkühlen. Stell das Bügeleisen beiseite, und schneide die Kante dann gerade und gleichmäßig.
    Leg die Decke mit der Vorderseite nach oben. Beginne an der hier angegebenen Stelle und geh im Uhrzeigersinn herum.
    Schieb die Kante der Decke bis an den Bruch in den Streifen. Halte sie dort mit Punkten aus auswaschbarem Kleber und mit Klammern fest. Nimm jede Klammer ab, bevor das Bügeleisen ihr nahe kommt, bügle und lass es abkühlen. Auf jeder Seite ist etwas weniger als die Hälfte des Streifens zu sehen: Den Rest nimmt die Kante auf.
    Falte den Streifen an jeder Ecke, wie ihre Bilder es zeigen. Leg ihn am Ende über seinen Anfang; nie über einer Kreuzung.
how-stitch-binding = Setz zuerst eine neue einzelne Jeansnadel der Stärke 100/16 ein, wenn die Anleitung deiner Maschine sie zulässt: Die Naht geht durch drei Lagen Jeansstoff, die zwei des Streifens und die Decke, und durch mehr, wo Quadrate und wo Streifen verbunden sind.
    Näh ringsum eine Reihe durch alle Lagen, { $edge } von der offenen Kante des Streifens. Geh langsam um die Ecken und über die Verbindungen der Quadrate, und dreh über den dicksten Stellen das Handrad.
corner-1 = Befestige den gefalteten Streifen an der ersten Kante bis zur Ecke. Der Rest ist noch frei.
corner-2 = Leg den freien Streifen um die Ecke, den Bruch an der nächsten Kante. An der Ecke steht vor, was übrig ist.
corner-3 = Leg das Übrige in eine schräge Falte, von der äußeren Ecke zur inneren; auf der Rückseite leg sie andersherum. Ein Punkt Kleber, dann bügeln.
corner-4 = Näh bis zur inneren Ecke und halte mit der Nadel im Stoff an. Heb den Nähfuß, dreh die Decke, senk den Fuß und näh weiter.
binding-shows = Vom Streifen von { $strip } sind auf jeder Seite { $plain } zu sehen, etwas weniger als die Hälfte: Den Rest nimmt die Kante auf. Wo Quadrate verbunden sind und wo der Streifen über sich selbst liegt, ist es noch etwas weniger.
how-snip = Schneide beide Zugaben jeder Naht senkrecht zur Naht ein, etwa alle { $apart }; nicht in die Naht.
    Nur eingeschnittene Kanten fransen beim Waschen aus.
how-wash = Wasch sie allein oder in einem Wäschesack. Schüttle sie gut aus, dann trockne sie.
    Reinige das Flusensieb davor und danach.
how-clip = Schneide die langen losen Fäden auf beiden Seiten ab. Lass die kurzen Fransen stehen.

bound-clear = Die Ansätze des Streifens liegen dann, wo es hier steht, jeder { $clear } oder mehr von den Verbindungen der Quadrate und den Ecken weg.
bound-clear-past = { $told } { $n ->
    [one] Der letzte Ansatz kommt danach, in dem, was über den Anfang hinausreicht; für ihn steht hier kein Ort.
   *[other] Die letzten { $n } Ansätze kommen danach, in dem, was über den Anfang hinausreicht; für sie steht hier kein Ort.
}
bound-on-lap = Wo die Einfassung auch beginnt, ein Ansatz kommt auf eine Verbindung der Quadrate oder auf eine Ecke. Dort ist es dick: Dreh das Handrad darüber.
special-old-lap = Hier wurde { $was } überlappt; im Plan stehen jetzt { $lap }. Solange nur Kleber hält, kannst du neu überlappen: siehe „Hier stimmt etwas nicht“.
special-opened = Diese Verbindung wurde wieder aufgetrennt: Nur { $length } davon sind zu nähen.
special-unbound = Nur dort, wo die Einfassung gelöst wurde: Das Übrige bleibt daran.
special-lap = { $joining ->
    [lapped] Wo { $a } auf { $b } trifft, nur { $lap } überlappen.
   *[other] Wo { $a } auf { $b } trifft, nur { $lap } Nahtzugabe.
}
special-ends = { $piece } ist entlang dieser Kante { $short } zu kurz: Leg das Stück so, dass es { $ends } hinter der Linie der anderen zurückbleibt.
special-edge-trim-edge = { $piece } bleibt { $ends } hinter der Kante zurück. Das verdeckt die Einfassung: Schneide nichts darauf zurück.
special-edge-glue-binding = { $piece } bleibt { $ends } hinter der Kante zurück: Dort reicht es nicht bis in den Falz des Streifens. Mach in der Linie der anderen weiter.
end-top = oben { $by }
end-right = rechts { $by }
end-bottom = unten { $by }
end-left = links { $by }
special-lap-middle = Dort läuft die Mitte der Naht { $middle } von der oberen offenen Kante, mit { $fringe } Fransen je Kante.
special-lap-rows = Dort laufen die Reihen { $first } und { $second } von der oberen offenen Kante, mit { $fringe } Fransen je Kante.

tick-cut = Zugeschnitten
tick-lap-halves = Überlappt und geklebt
tick-press-halves = Gebügelt
tick-cool-halves = Abgekühlt
tick-stitch-halves = Genäht
tick-cut-fabric = Zugeschnitten
tick-cover-front = Aufgeklebt
tick-cover-back = Aufgeklebt
tick-press-cover = Gebügelt
tick-cool-cover = Abgekühlt
tick-stitch-patch = Ringsum festgenäht
tick-dot = Überlappt und geklebt
tick-press-lap = Gebügelt
tick-cool-lap = Abgekühlt
tick-pin = Gesteckt
tick-stitch = Genäht
tick-stitch-rows = Beide Reihen genäht
tick-press-seam = Gebügelt
tick-press-block = Flach gebügelt
tick-square-up = Auf Maß geschnitten
tick-trim-edge = Gebügelt und begradigt
tick-cut-binding = Streifen geschnitten
tick-join-binding = Streifen verbunden
tick-press-binding = Gefaltet und gebügelt
tick-glue-binding = Umgelegt und geheftet
tick-stitch-binding = Festgenäht
tick-snip = Eingeschnitten
tick-wash = Gewaschen und trocken
tick-clip = Fäden abgeschnitten

past-cut = zugeschnitten
past-lap-halves = überlappt und geklebt
past-press-halves = gebügelt
past-cool-halves = abgekühlt
past-stitch-halves = genäht
past-cut-fabric = aus Stoff zugeschnitten
past-cover-front = vorn beklebt
past-cover-back = hinten beklebt
past-press-cover = gebügelt
past-cool-cover = abgekühlt
past-stitch-patch = ringsum festgenäht
past-dot = überlappt und geklebt
past-lap-and-press = überlappt und gebügelt
past-not-pressed = überlappt, noch nicht gebügelt
past-press-lap = gebügelt
past-cool-lap = abgekühlt
past-pin = gesteckt
past-stitch = genäht
past-stitch-rows = genäht, beide Reihen
past-press-seam = gebügelt
past-press-block = flach gebügelt
past-square-up = auf Maß geschnitten
past-trim-edge = Kante gebügelt und begradigt
past-cut-binding = Streifen geschnitten
past-join-binding = Streifen verbunden
past-press-binding = Einfassung gefaltet und gebügelt
past-glue-binding = Einfassung um die Kante gelegt
past-stitch-binding = Einfassung genäht
past-snip = Zugaben eingeschnitten
past-wash = gewaschen
past-clip = Fäden abgeschnitten

task-cut = zuschneiden
task-lap-halves = die Hälften überlappen und kleben
task-press-halves = die Überlappung der Hälften bügeln
task-cool-halves = die Überlappung der Hälften abkühlen lassen
task-stitch-halves = die Hälften nähen
task-cut-fabric = die Stoffquadrate zuschneiden
task-cover-front = Stoff vorn aufkleben
task-cover-back = Stoff hinten aufkleben
task-press-cover = das beklebte Quadrat bügeln
task-cool-cover = das beklebte Quadrat abkühlen lassen
task-stitch-patch = den Flicken ringsum festnähen
task-dot = überlappen und kleben
task-press-lap = die Überlappung bügeln
task-cool-lap = die Überlappung abkühlen lassen
task-pin = stecken
task-stitch = nähen
task-press-seam = die Naht bügeln
task-press-block = flach bügeln
task-square-up = auf Maß schneiden
task-trim-edge = die ganze Kante bügeln und begradigen
task-cut-binding = die Einfassstreifen schneiden
task-join-binding = die Einfassstreifen verbinden
task-press-binding = die Einfassung falten und bügeln
task-glue-binding = die Einfassung um die Kante legen
task-stitch-binding = die Einfassung nähen
task-snip = die Nahtzugaben einschneiden
task-wash = waschen
task-clip = die Fäden abschneiden

## Vorsicht

caution-blade-title = Scharfe Klinge
caution-blade = Sichere den Rollschneider jedes Mal, wenn du ihn weglegst. Schneide vom Körper weg, und halte die Hand am Lineal von der Kante fern. Folge der Anleitung des Rollschneiders.
caution-iron-title = Heißes Bügeleisen
caution-iron = An Bügelsohle und Dampf verbrennt man sich, auch an dem, der aus feuchtem Kleber kommt. Stell das Bügeleisen auf, wenn du es loslässt, und halte das Kabel aus dem Weg. Folge den Anleitungen von Bügeleisen und Kleber.
caution-blade-and-iron-title = Heißes Eisen, scharfe Klinge
caution-blade-and-iron = Zuerst das Eisen: An Sohle und Dampf verbrennt man sich. Stell es auf, wenn du es loslässt, halte das Kabel aus dem Weg und stell es beiseite, bevor du schneidest. Dann der Rollschneider: Schließ den Klingenschutz jedes Mal, wenn du ihn weglegst, schneide vom Körper weg und halte die Hand, die das Lineal hält, fern von der Kante. Beachte die Anleitungen von beiden.
caution-needle-title = Nadel
caution-needle = An Nieten, Reißverschlüssen und Stecknadeln bricht die Nadel: Nimm Nieten und Reißverschlüsse zuerst heraus, und jede Stecknadel, bevor der Fuß sie erreicht. Trag beim Nähen über dicke Kreuzungen einen Augenschutz und dreh dort das Handrad. { $stitch ->
    [twin] Eine Zwillingsnadel trifft die Stichplatte, wenn der Stich breiter eingestellt ist als ihre Öffnung abzüglich des Nadelabstands: Stell einen Geradstich ein, Nadel in der Mitte, und dreh das Handrad einmal ganz herum, bevor du anfängst. Eine Geradstichplatte mit einem runden Loch verträgt weder Zwillingsnadel noch Zickzack.
    [zigzag] Eine Geradstichplatte mit einem runden Loch verträgt keinen Zickzack: Setz Platte und Fuß mit der breiten Öffnung ein und dreh das Handrad einen ganzen Zickzack weit, bevor du anfängst.
   *[straight] Stell einen Geradstich ein, Nadel in der Mitte: Auf einer Geradstichplatte mit einem runden Loch trifft eine verstellte Nadel die Platte. Dreh das Handrad einmal ganz herum, bevor du anfängst.
} Die Anleitung der Maschine entscheidet.
caution-lint-title = Flusen sind brennbar
caution-lint = Offene Kanten geben viele Flusen ab. Reinige das Flusensieb des Trockners vor und nach jeder Ladung, und lass den Trockner nicht unbeaufsichtigt laufen. Folge der Anleitung der Maschine.
caution-children-title = Kleine Kinder
caution-children = Lange Fransen und lose Teile gehören nicht ins Babybett. Wenn du die Decke einem Kind gibst oder verkaufst, entscheiden die Regeln zur Produktsicherheit, die bei dir gelten.

## Zahlen

figure-square = Zuschnitt des Quadrats
figure-fabric = Stoff
figure-from-denim = Aus
figure-cooling = Abkühlen etwa
figure-lap = Überlappung
figure-allowance = Nahtzugabe
figure-seam = Länge der Naht
figure-again = Neu zu machen
figure-middle = Naht von der Kante
figure-row-first = Erste Reihe, von der oberen Kante
figure-row-second = Zweite Reihe, von der oberen Kante
figure-rows-apart = Von Reihe zu Reihe
figure-twin = Nadelabstand
figure-stitch-length = Stichlänge
figure-stitch-width = Stichbreite
figure-fringe = Fransen je Kante
figure-fringe-between = Fransen je Kante, zwischen Vierern
figure-trim-to = Schneiden auf
figure-measured = Gemessen
figure-across = Breite
figure-down = Höhe
figure-should-be = Soll messen
figure-strips = Streifen
figure-strip = Streifenbreite
figure-longest = Länge je Streifen
figure-folded = Gefaltet so breit
figure-begin-top = Beginn: oben, von links
figure-begin-right = Beginn: rechts, von oben
figure-begin-bottom = Beginn: unten, von rechts
figure-begin-left = Beginn: links, von unten
figure-join-top = Ansätze: oben, von links
figure-join-right = Ansätze: rechts, von oben
figure-join-bottom = Ansätze: unten, von rechts
figure-join-left = Ansätze: links, von unten
figure-joins = Ansätze
figure-each-face = Zu sehen je Seite
figure-from-raw-edge = Von der offenen Streifenkante
figure-from-fold = Vom Bruch
figure-binding = Einfassung
figure-joined = Verbunden mindestens
figure-round = Ringsum
figure-finished = Fertiges Maß
figure-finished-sewn = Fertiges Maß, mit dem schon Genähten
figure-squares = Quadrate
figure-pair = Paar
figure-four = Vierer
figure-pair-to-sew = Paar, noch zu nähen
figure-four-to-sew = Vierer, noch zu nähen
figure-blocks = Besteht aus
figure-seams = Nähte
figure-layers = Stofflagen
figure-layers-denim = Lagen Jeans, ohne Stoffquadrate
figure-off-across = Breite
figure-off-down = Höhe
figure-lap-sewn-across = Genähte Überlappung, Breite (samt Dehnung)
figure-lap-sewn-down = Genähte Überlappung, Höhe (samt Dehnung)
figure-allowance-sewn-across = Genähte Nahtzugabe, Breite (samt Dehnung)
figure-allowance-sewn-down = Genähte Nahtzugabe, Höhe (samt Dehnung)
figure-mean = Durchschnittliche Kante
figure-spread = Kürzeste bis längste Kante
figure-mean-lap = Durchschnittliche genähte Überlappung
figure-mean-allowance = Durchschnittliche genähte Nahtzugabe
lap-sewn = { $lap } (geplant { $meant })
strips = { $n ->
    [one] { $n } Streifen
   *[other] { $n } Streifen
}
blocks = { $fours ->
    [0] { "" }
    [one] { $fours } Vierer
   *[other] { $fours } Vierern
}{ $pairs ->
    [0] { "" }
   *[other] { $fours ->
        [0] { "" }
       *[other] , { "" }
    }
}{ $pairs ->
    [0] { "" }
    [one] { $pairs } einzelnen Paar
   *[other] { $pairs } einzelnen Paaren
}{ $squares ->
    [0] { "" }
   *[other] { $pairs ->
        [0] { $fours ->
            [0] { "" }
           *[other] , { "" }
        }
       *[other] , { "" }
    }
}{ $squares ->
    [0] { "" }
    [one] { $squares } einzelnen Quadrat
   *[other] { $squares } einzelnen Quadraten
}
seams = { $n ->
    [one] { $n } Naht, { $length }
   *[other] { $n } Nähte, zusammen { $length }
}
seams-twice = { $n ->
    [one] { $n } Naht, { $length }, zweimal genäht
   *[other] { $n } Nähte, zusammen { $length }, jede zweimal genäht
}
layers = { $crossing ->
    [0] bis zu { $lap }, wo zwei Quadrate zusammenkommen
   *[other] bis zu { $lap }, wo zwei Quadrate zusammenkommen, { $crossing }, wo vier Ecken zusammenkommen
}
layers-seamed = { $crossing ->
    [0] bis zu { $lap }, wo zwei Quadrate zusammenkommen; zu einer Seite gebügelt etwa die Hälfte mehr
   *[other] bis zu { $lap }, wo zwei Quadrate zusammenkommen, { $crossing }, wo es vier Ecken sind; zu einer Seite gebügelt etwa die Hälfte mehr
}
binding = { $n ->
    [one] { $length } in { $n } Streifen
   *[other] { $length } in { $n } Streifen
}

## Seiten

bare = nur Jeansstoff
cell = { $piece }: { $cloth }
cell-stays = { $piece }: { $cloth }, bleibt, wie es ist
cell-pinned = { $piece }: { $cloth }, behält seinen Platz
bare-wrong-side = nur Jeansstoff, linke Stoffseite
face-front = Vorderseite
face-back = Rückseite, gewendet gesehen
face-covered = { $n } von { $all } Quadraten haben auf dieser Seite Stoff.
face-both = { $n ->
    [0] Keins hat auf beiden Seiten Stoff.
    [one] Ein Quadrat hat auf beiden Seiten Stoff.
   *[other] { $n } Quadrate haben auf beiden Seiten Stoff.
}
face-pieced = { $n ->
    [one] Ein Quadrat ist aus zwei Hälften gestückelt (½).
   *[other] { $n } Quadrate sind aus zwei Hälften gestückelt (½).
}
face-laid-on = Auf ein schon eingenähtes Quadrat wird der Stoff aufgesetzt: auf { $side } zugeschnitten, damit er keine Überlappung berührt, in die Mitte geklebt und rundherum festgenäht. Die Naht ist auch auf der anderen Seite zu sehen.
face-patches = { $n ->
    [one] Ein Stoff liegt als Flicken mitten auf seinem Quadrat.
   *[other] { $n } Stoffe liegen als Flicken mitten auf ihren Quadraten.
}
face-layers = { $crossing ->
    [0] Die dickste Verbindung hat { $lap } Lagen.
   *[other] Die dickste Verbindung hat { $lap } Lagen, die dickste Kreuzung { $crossing }.
}
face-spoken = { $title }: { $across } breit, { $down } hoch, { $n } mit Stoff
print-used = { $used } verwendet
print-spoilt = { $n } unbrauchbar
print-aside = { $n } beiseitegelegt
print-mixed = jedes Quadrat anders
print-patches = Flicken von { $side }, ringsum je { $round } Jeans
print-left = { $n } übrig
print-short = { $n } zu wenig
print-of = { $used } von { $stock } verwendet

## Werkbank

stage-open = nicht zugeschnitten
stage-cut = zugeschnitten, nicht bereit
stage-ready = bereit zum Verbinden
stage-held = zusammen{ "\u00AD" }gefügt, nicht genäht
stage-paired = in einem Paar
stage-blocked = in einem Vierer
stage-squared = auf Maß geschnitten
stage-joined = mit dem Rest verbunden
tally-cut = Quadrate zugeschnitten
tally-fabric = Stoffquadrate zugeschnitten
tally-front = Stoff vorn
tally-back = Stoff hinten
tally-pairs = Paare genäht
tally-fours = Vierer genäht
tally-squared = Auf Maß geschnitten
tally-larger = Größere Verbindungen
losses-none = Noch kein Quadrat unbrauchbar.
losses = Bisher unbrauchbar: { $list }.
mishap-mis-cut = falsch zugeschnitten
mishap-flaw = Loch, Fleck oder abgewetzte Stelle
mishap-scorched = versengt
mishap-lost = verloren
line-done = Erledigt: { $task }
line-next = Als Nächstes: { $task }
line-waits = Wartet auf { $part }
line-complete = Alle Schritte sind erledigt
line-measured = Gemessen { $size }
line-squared = Auf Maß geschnitten: { $size }
line-note = Notiz: { $text }

## Messen

measure-keep = Dieses Maß sichern
verdict-across-exact = Breite: genau richtig.
verdict-across-over = Breite: { $over } zu groß. Schneide links { $before } und rechts { $after } ab; { $even ->
    [yes] die Kreuzung bleibt in der Mitte.
   *[no] die Kreuzung bleibt der Mitte so nah, wie das Lineal es zeigt.
}
verdict-across-over-rest = Breite: { $over } zu groß. Schneide links { $before } und den Rest, { $after }, rechts ab; { $even ->
    [yes] die Kreuzung bleibt in der Mitte.
   *[no] die Kreuzung bleibt der Mitte so nah, wie das Lineal es zeigt.
}
verdict-across-over-one-side = Breite: { $over } zu groß, weniger, als sich an diesem Lineal halbieren lässt. Schneide es rechts ab.
verdict-across-under = Breite: { $over } zu klein. Schneide links und rechts nichts ab.
verdict-across-thin = Nach der gemessenen Breite ist die Überlappung nur { $lap } breit, mit { $fringe } Fransen je Kante; { $least } ist das Mindeste. Gedehnter Stoff ergäbe dasselbe Maß: Sieh dir die Überlappung selbst an. Ist sie so schmal, schneide nichts ab: siehe „Hier stimmt etwas nicht“.
verdict-down-exact = Höhe: genau richtig.
verdict-down-over = Höhe: { $over } zu groß. Schneide oben { $before } und unten { $after } ab; { $even ->
    [yes] die Kreuzung bleibt in der Mitte.
   *[no] die Kreuzung bleibt der Mitte so nah, wie das Lineal es zeigt.
}
verdict-down-over-rest = Höhe: { $over } zu groß. Schneide oben { $before } und den Rest, { $after }, unten ab; { $even ->
    [yes] die Kreuzung bleibt in der Mitte.
   *[no] die Kreuzung bleibt der Mitte so nah, wie das Lineal es zeigt.
}
verdict-down-over-one-side = Höhe: { $over } zu groß, weniger, als sich an diesem Lineal halbieren lässt. Schneide es unten ab.
verdict-down-under = Höhe: { $over } zu klein. Schneide oben und unten nichts ab.
verdict-down-thin = Nach der gemessenen Höhe ist die Überlappung nur { $lap } breit, mit { $fringe } Fransen je Kante; { $least } ist das Mindeste. Gedehnter Stoff ergäbe dasselbe Maß: Sieh dir die Überlappung selbst an. Ist sie so schmal, schneide nichts ab: siehe „Hier stimmt etwas nicht“.
short-edge-top = Oben { $by } zu wenig; die Einfassung verdeckt es. Dort ist sonst nichts zu tun.
short-edge-right = Rechts { $by } zu wenig; die Einfassung verdeckt es. Dort ist sonst nichts zu tun.
short-edge-bottom = Unten { $by } zu wenig; die Einfassung verdeckt es. Dort ist sonst nichts zu tun.
short-edge-left = Links { $by } zu wenig; die Einfassung verdeckt es. Dort ist sonst nichts zu tun.
short-join-top = { $joining ->
    [lapped] Verbinde es oben mit { $piece } und überlappe dort nur { $lap }: Das gleicht { $by } aus.
   *[other] Verbinde es oben mit { $piece } und nimm dort nur { $lap } Nahtzugabe: Das gleicht { $by } aus.
}
short-join-right = { $joining ->
    [lapped] Verbinde es rechts mit { $piece } und überlappe dort nur { $lap }: Das gleicht { $by } aus.
   *[other] Verbinde es rechts mit { $piece } und nimm dort nur { $lap } Nahtzugabe: Das gleicht { $by } aus.
}
short-join-bottom = { $joining ->
    [lapped] Verbinde es unten mit { $piece } und überlappe dort nur { $lap }: Das gleicht { $by } aus.
   *[other] Verbinde es unten mit { $piece } und nimm dort nur { $lap } Nahtzugabe: Das gleicht { $by } aus.
}
short-join-left = { $joining ->
    [lapped] Verbinde es links mit { $piece } und überlappe dort nur { $lap }: Das gleicht { $by } aus.
   *[other] Verbinde es links mit { $piece } und nimm dort nur { $lap } Nahtzugabe: Das gleicht { $by } aus.
}
short-open = In der { $way ->
    [across] Breite
   *[down] Höhe
} sind { $part ->
    [rest] die übrigen { $by }
   *[all] die fehlenden { $by }
} noch nicht ausgeglichen: Sieh bei „Hier stimmt etwas nicht“ nach, bevor du weitermachst.
short-open-keep = In der { $way ->
    [across] Breite
   *[down] Höhe
} sind { $part ->
    [rest] die übrigen { $by }
   *[all] die fehlenden { $by }
} noch nicht ausgeglichen: Sichere dieses Maß, dann sieh, was sich tun lässt.
short-open-kept = In der { $way ->
    [across] Breite
   *[down] Höhe
} sind { $part ->
    [rest] die übrigen { $by }
   *[all] die fehlenden { $by }
} noch nicht ausgeglichen: Sieh nach, was sich tun lässt.
short-left = In der { $way ->
    [across] Breite
   *[down] Höhe
} sind { $part ->
    [rest] die übrigen { $by }
   *[all] die fehlenden { $by }
} noch nicht ausgeglichen.
short-eased = { $joining ->
    [lapped] { $by } zu wenig gibt der Stoff her: Halte beim Überlappen die Kanten zusammen, dann verteilt es sich.
   *[other] { $by } zu wenig gibt der Stoff her: Steck zuerst die Enden, dann die Kanten dazwischen, so verteilt es sich.
}
short-eased-little = { $joining ->
    [lapped] Es fehlt kaum etwas, und so viel gibt der Stoff her: Halte beim Überlappen die Kanten zusammen, dann verteilt es sich.
   *[other] Es fehlt kaum etwas, und so viel gibt der Stoff her: Steck zuerst die Enden, dann die Kanten dazwischen, so verteilt es sich.
}
short-settled = Es kann so, wie es ist, auf Maß geschnitten und verbunden werden.
summary-none = Noch kein Vierer gemessen.
summary-none-straight = { $n ->
    [one] Der einzige gemessene Vierer war schief; aus ihm lässt sich noch nichts ablesen.
   *[other] Alle { $n } gemessenen Vierer waren schief; aus ihnen lässt sich noch nichts ablesen.
}
summary-leaning = { $n ->
    [one] Ein weiterer war beim Messen schief und zählt hier nicht mit.
   *[other] { $n } weitere waren beim Messen schief und zählen hier nicht mit.
}
drift-too-few = { $n ->
    [one] Ein Vierer gemessen: zu wenig, um Gewohnheit von Zufall zu unterscheiden. Breite und Höhe zusammen: { $mean }.
   *[other] { $n } Vierer gemessen: zu wenig, um Gewohnheit von Zufall zu unterscheiden. Breite und Höhe zusammen, im Mittel { $mean }.
}
drift-as-planned = { $n } Vierer gemessen. Sie werden wie geplant; im Mittel { $mean }.
drift-scattered = { $n } Vierer gemessen. Im Mittel { $mean }, aber sie sind ungleich: von { $least } bis { $most }. Miss jeden, bevor du ihn beschneidest, und sieh nach, wie die Quadrate zugeschnitten und überlappt wurden.
drift-guess = { $n } Vierer gemessen: bisher im Mittel { $mean }. Zu wenige, um die Überlappung danach zu ändern: Miss fünf oder mehr.
drift-narrow = { $n } Vierer gemessen. Sie sind gleichmäßig zu groß: { $joining ->
    [lapped] Die Überlappung
   *[other] Die Nahtzugabe
} wird { $by } schmaler genäht als angezeichnet.
drift-wide = { $n } Vierer gemessen. Sie sind gleichmäßig zu klein: { $joining ->
    [lapped] Die Überlappung
   *[other] Die Nahtzugabe
} wird { $by } breiter genäht als angezeichnet.
drift-stretch-across = { $n } Vierer gemessen. Sie sind zu breit, aber nicht zu hoch: Der Stoff dehnt sich in der Breite (im Mittel { $mean }).
drift-stretch-down = { $n } Vierer gemessen. Sie sind zu hoch, aber nicht zu breit: Der Stoff dehnt sich in der Höhe (im Mittel { $mean }).
drift-stretch-both = { $n } Vierer gemessen. Sie sind zu groß, aber nicht alle gleich: Der Stoff dehnt sich (im Mittel { $mean }).
drift-uneven = { $n } Vierer gemessen. Sie sind ungleich, aber nicht durch Dehnung oder eine falsche Überlappung (im Mittel { $mean }). Sieh dir den Zuschnitt an.
drift-growing = { $n } Vierer gemessen. Im Mittel ist jeder { $by } größer als der vorige: Die Markierung oder die Führung verschiebt sich.
drift-shrinking = { $n } Vierer gemessen. Im Mittel ist jeder { $by } kleiner als der vorige: Die Markierung oder die Führung verschiebt sich.
drift-mark-wider = { $joining ->
    [lapped] Zeichne die nächsten Überlappungen { $by } breiter an.
   *[other] Näh die nächsten Nähte mit { $by } mehr Zugabe.
}
drift-mark-narrower = { $joining ->
    [lapped] Zeichne die nächsten Überlappungen { $by } schmaler an.
   *[other] Näh die nächsten Nähte mit { $by } weniger Zugabe.
}
sure-guess = Bei so wenigen ist das geraten.
sure-likely = Bei so vielen ist das wahrscheinlich.
sure-firm = Bei so vielen ist das ziemlich sicher.
figure-skew = Ecke aus dem Winkel
figure-holds = Größtes Maß, das hineinpasst
figure-trim-top = Oben abschneiden
figure-trim-right = Rechts abschneiden
figure-trim-bottom = Unten abschneiden
figure-trim-left = Links abschneiden
skew = { $degrees }°
skew-none = rechtwinklig
wedge = { $from } bis { $to }
trim-by-marks = Zeichne auf jeder Seite an beiden Enden an, was dort wegkommt, leg das Lineal an die beiden Marken und schneide.
pull-falling = Das Stück ist schief: Von links oben nach rechts unten ist es { $by } kürzer als andersherum. Zieh es vor dem Schneiden sacht an dieser kurzen Diagonale, dämpf es flach (Bügeleisen und Dampf sind heiß: halte die Hand fern), lass es abkühlen und miss noch einmal.
pull-rising = Das Stück ist schief: Von rechts oben nach links unten ist es { $by } kürzer als andersherum. Zieh es vor dem Schneiden sacht an dieser kurzen Diagonale, dämpf es flach (Bügeleisen und Dampf sind heiß: halte die Hand fern), lass es abkühlen und miss noch einmal.
pulled-still = Es steht auch nach dem Ziehen noch schief. Lässt es sich nicht weiter ziehen, schneide es wie hier gezeigt.
pull-square = Das Stück ist schief. Zieh es vor dem Schneiden sacht an der kurzen Diagonale, dämpf es flach (Bügeleisen und Dampf sind heiß: halte die Hand fern), lass es abkühlen und miss noch einmal.
outline-short = Das Stück ist zu klein für { $target }; höchstens passt { $held } hinein.
outline-holds = { $target } passt hinein.
nothing = nichts
wedge-out = { $from }, auslaufend auf nichts
wedge-in = von nichts bis { $to }
outline-top = die obere Kante
outline-right = die rechte Kante
outline-bottom = die untere Kante
outline-left = die linke Kante
outline-falling = die Diagonale von links oben nach rechts unten
outline-rising = die Diagonale von rechts oben nach links unten
picture-outline = { $piece }, der wahre Umriss und wo zu schneiden ist
trim-none-short = Kein gemessenes Stück ist zu klein.
trim-short = { $n ->
    [one] Ein gemessenes Stück ist zu klein.
   *[other] { $n } gemessene Stücke sind zu klein.
}
trim-waste = Im Mittel fallen je Kante { $waste } weg.
trim-waste-none = Von den Kanten fällt kaum etwas weg.
trim-choose = Schneiden auf { $size }
save-lap = { $joining ->
    [lapped] bei { $piece } { $lap } überlappen
   *[other] bei { $piece } { $lap } Nahtzugabe
}
save-across-lapped = { $piece } ist { $short } zu schmal: { $laps }.
save-down-lapped = { $piece } ist { $short } zu kurz: { $laps }.
save-over = Dazwischen hat das Lineal keinen Strich: Die Reihe oder Spalte wird damit { $over } zu lang, was sich beim Zusammennähen einhalten lässt.
save-across-eased = { $joining ->
    [lapped] { $piece } ist { $short } zu schmal, was der Stoff hergibt: Halte beim Überlappen die Kanten zusammen.
   *[other] { $piece } ist { $short } zu schmal, was der Stoff hergibt: Steck zuerst die Enden, dann die Kanten dazwischen.
}
save-down-eased = { $joining ->
    [lapped] { $piece } ist { $short } zu kurz, was der Stoff hergibt: Halte beim Überlappen die Kanten zusammen.
   *[other] { $piece } ist { $short } zu kurz, was der Stoff hergibt: Steck zuerst die Enden, dann die Kanten dazwischen.
}
save-across-edge = { $piece } ist { $short } zu schmal, an der Außenkante, wo die Einfassung es verdeckt.
save-down-edge = { $piece } ist { $short } zu kurz, an der Außenkante, wo die Einfassung es verdeckt.
save-across-resewn = { $joining ->
    [lapped] { $piece } ist { $short } zu schmal: Trenn die senkrechten Überlappungen auf und näh sie um so viel schmaler.
   *[other] { $piece } ist { $short } zu schmal: Trenn die senkrechten Nähte auf und näh sie mit um so viel weniger Zugabe.
}
save-down-resewn = { $joining ->
    [lapped] { $piece } ist { $short } zu kurz: Trenn die waagerechte Überlappung auf und näh sie um so viel schmaler.
   *[other] { $piece } ist { $short } zu kurz: Trenn die waagerechte Naht auf und näh sie mit um so viel weniger Zugabe.
}
save-across-renewed = { $piece } ist { $short } zu schmal: noch einmal machen.
save-down-renewed = { $piece } ist { $short } zu kurz: noch einmal machen.
save-across-left = { $piece } ist { $short } zu schmal und eingenäht; die Reihe bleibt zu schmal.
save-down-left = { $piece } ist { $short } zu kurz und eingenäht; die Spalte bleibt zu kurz.
reason-none-short = Bei { $size } ist kein Stück zu klein.
reason-keep = { $n ->
    [one] Bei { $size } ist ein Stück zu klein, und es zu retten kostet weniger, als jeden Vierer kleiner zu machen.
   *[other] Bei { $size } sind { $n } Stücke zu klein, und sie zu retten kostet weniger, als jeden Vierer kleiner zu machen.
}
reason-larger = Alle Vierer sind größer geworden als { $natural }; bei { $size } ist keiner zu klein, und es fällt am wenigsten weg. Die Decke wird entsprechend größer.
reason-smaller = Bei { $natural } { $n ->
    [one] ist ein Stück zu klein
   *[other] sind { $n } Stücke zu klein
}; bei { $size } { $left ->
    [0] keins
    [one] eins
   *[other] { $left }
}.
reason-cost = { $n ->
    [0] Insgesamt der kleinste Aufwand: kaum Arbeit oder verlorener Stoff.
    [one] Insgesamt der kleinste Aufwand: etwa eine Minute Arbeit, verlorener Stoff mitgerechnet, nach unserer Schätzung.
   *[other] Insgesamt der kleinste Aufwand: etwa { $n } Minuten Arbeit, verlorener Stoff mitgerechnet, nach unserer Schätzung.
}
closing-all = Alle Reihen und Spalten werden so lang, wie sie sollen.
block-key-right = genau richtig
block-key-short = zu klein
block-key-over = zu beschneiden
block-key-planned = nach Plan, noch nicht gemessen
block-key-open = noch nicht genäht
closing-row = { $of ->
    [pairs] Paarreihe { $n } wird { $off }.
   *[fours] Viererreihe { $n } wird { $off }.
}
closing-column = { $of ->
    [pairs] Paarspalte { $n } wird { $off }.
   *[fours] Viererspalte { $n } wird { $off }.
}

## Stücke, die nicht stimmen

off-block = Das Stück misst { $size }. Breite: { $across }. Höhe: { $down }.
off-leans = Es steht schief: Zieh es gerade, dämpf es flach (Bügeleisen und Dampf sind heiß: halte die Hand fern) und miss es noch einmal. So, wie es jetzt ist, passt nur das Folgende hinein.
off-thin-across = Bei dieser Breite lassen die senkrechten Überlappungen zu wenig Fransen, wenn sich nicht der Stoff gedehnt hat: Miss eine Überlappung nach.
off-thin-down = Bei dieser Höhe lässt die waagerechte Überlappung zu wenig Fransen, wenn sich nicht der Stoff gedehnt hat: Miss die Überlappung nach.
off-thin-stretched = Ist die Überlappung so breit wie geplant, hat sich der Stoff gedehnt: Dann genügt es, abzuschneiden, was übersteht, wenn du es auf Maß schneidest. Ist sie schmaler, sieh unten nach.
off-measure-first = Miss es, um zu sehen, was sich bei seinem Maß tun lässt.
off-not-cut = Dieses Quadrat ist noch nicht zugeschnitten.
off-which = Wenn eins seiner Quadrate unbrauchbar ist, wähle aus, welches.
off-rest = Was stimmt damit nicht? Wähle ein Quadrat, das unbrauchbar ist, oder miss das Stück.
off-rest-trim = Schneide ab, was übersteht, wenn du es auf Maß schneidest. Stimmt sonst etwas nicht, wähle das Quadrat, das unbrauchbar ist.
off-mis-cut = Es ist zu klein oder schief zugeschnitten.
off-flaw = Es hat ein Loch, einen Fleck oder eine abgewetzte Stelle.
off-scorched = Es ist versengt.
off-lost = Es ist nicht zu finden.
way-spare = { $n ->
    [one] Das Ersatzquadrat einsetzen
   *[other] Eins von { $n } Ersatzquadraten einsetzen
}
way-spare-other = { $n ->
    [one] Das Ersatzquadrat aus { $denim } einsetzen
   *[other] Eins von { $n } Ersatzquadraten aus { $denim } einsetzen
}
way-from-place = Das lose Quadrat von { $place } einsetzen
way-from-place-open = { $place } ist dann leer und neu zuzuschneiden.
way-from-place-piece = Schneide es aus { $name }, { $part } (etwa { $over } übrig).
way-from-place-other = Von { $own } gibt der Stapel nichts mehr her. An jenen Platz passt stattdessen { $denim } am besten: Ändere dort den Jeansstoff, bevor du zuschneidest.
way-from-place-more = Von { $own } gibt der Stapel nichts mehr her und von keinem anderen Jeansstoff, sodass jener Platz wartet, bis mehr Stoff da ist.
way-recut = Ein neues zuschneiden
way-recut-more = Den Platz offen lassen, bis mehr Stoff da ist
way-recut-from = Ein neues aus { $name }, { $part } schneiden (etwa { $over } übrig)
way-recut-other = Stattdessen eins aus { $denim } schneiden, aus { $name }, { $part } (etwa { $over } übrig)
way-patch = { $face ->
    [front] Die schadhafte Stelle vorn mit Stoff bekleben
   *[other] Die schadhafte Stelle hinten mit Stoff bekleben
}
way-fewer-across = { $n ->
    [one] Die Decke ein Quadrat breit machen
   *[other] Die Decke { $n } Quadrate breit machen
}
way-fewer-down = { $n ->
    [one] Die Decke ein Quadrat hoch machen
   *[other] Die Decke { $n } Quadrate hoch machen
}
way-lap-less = { $joining ->
    [lapped] { $n ->
        [one] Zum Nachbarn hin weniger überlappen
       *[other] Zu den Nachbarn hin weniger überlappen
    }
   *[other] { $n ->
        [one] Zum Nachbarn hin weniger Nahtzugabe nehmen
       *[other] Zu den Nachbarn hin weniger Nahtzugabe nehmen
    }
}
way-resew = { $joining ->
    [lapped] Überlappung auftrennen und schmaler nähen
   *[other] Naht auftrennen und mit weniger Zugabe nähen
}
way-lap-again = Lösen und mit { $lap } neu überlappen
way-lap-again-all = Alle { $n } lösen, die mit { $was } überlappt wurden, und mit { $lap } neu überlappen
way-resew-wider = { $joining ->
    [lapped] Überlappung auftrennen und mit { $lap } neu nähen
   *[other] Naht auftrennen und mit { $lap } Zugabe neu nähen
}
way-trim = { $joining ->
    [lapped] { $n ->
        [0] Alle Vierer auf { $size } schneiden
        [one] Alle Vierer auf { $size } schneiden und an einer Verbindung weniger überlappen
       *[other] Alle Vierer auf { $size } schneiden und an { $n } Verbindungen weniger überlappen
    }
   *[other] { $n ->
        [0] Alle Vierer auf { $size } schneiden
        [one] Alle Vierer auf { $size } schneiden und an einer Verbindung weniger Zugabe nehmen
       *[other] Alle Vierer auf { $size } schneiden und an { $n } Verbindungen weniger Zugabe nehmen
    }
}
way-to-edge = Den Platz mit { $place } tauschen, wo die Einfassung es verdeckt
way-another = Beiseitelegen und noch einmal machen
way-fewer-itself = Es liegt in dem, was wegfällt.
way-fewer-squares = { $n ->
    [one] Dadurch wird ein gutes Quadrat frei. Setz es danach hier ein.
   *[other] Dadurch werden { $n } gute Quadrate frei. Setz danach eins davon hier ein.
}
way-fewer-cloth = { $n ->
    [one] Ein Quadrat weniger ist zu schneiden: Schneide dieses aus dessen Stoff.
   *[other] { $n } Quadrate weniger sind zu schneiden: Schneide dieses aus deren Stoff.
}
way-spare-done = Erledigt: Für { $piece } ist ein Ersatz genommen.
way-from-place-done = Erledigt: Das Quadrat von { $place } geht an { $piece }. { $place } ist neu zuzuschneiden.
way-recut-done = Erledigt: { $piece } ist neu zuzuschneiden.
way-patch-done = { $face ->
    [front] Erledigt: { $piece } wird vorn mit Stoff beklebt.
   *[other] Erledigt: { $piece } wird hinten mit Stoff beklebt.
}
way-fewer-across-done = { $n ->
    [one] Erledigt: Die Decke ist jetzt ein Quadrat breit.
   *[other] Erledigt: Die Decke ist jetzt { $n } Quadrate breit.
}
way-fewer-down-done = { $n ->
    [one] Erledigt: Die Decke ist jetzt ein Quadrat hoch.
   *[other] Erledigt: Die Decke ist jetzt { $n } Quadrate hoch.
}
way-lap-less-done = { $joining ->
    [lapped] { $n ->
        [one] Erledigt: Eine Verbindung von { $piece } wird schmaler überlappt. Ihr Schritt zeigt es an.
       *[other] Erledigt: { $n } Verbindungen von { $piece } werden schmaler überlappt. Ihre Schritte zeigen es an.
    }
   *[other] { $n ->
        [one] Erledigt: Eine Verbindung von { $piece } bekommt weniger Nahtzugabe. Ihr Schritt zeigt es an.
       *[other] Erledigt: { $n } Verbindungen von { $piece } bekommen weniger Nahtzugabe. Ihre Schritte zeigen es an.
    }
}
way-resew-done = { $joining ->
    [lapped] Erledigt: Die Überlappung von { $piece } ist aufzutrennen und schmaler zu nähen.
   *[other] Erledigt: Die Naht von { $piece } ist aufzutrennen und mit weniger Zugabe zu nähen.
}
way-lap-again-done = Erledigt: { $piece } ist zu lösen und mit { $lap } neu zu überlappen.
way-lap-again-all-done = Erledigt: { $n } sind zu lösen und mit { $lap } neu zu überlappen.
way-resew-wider-done = { $joining ->
    [lapped] Erledigt: Die Überlappung von { $piece } ist aufzutrennen und mit { $lap } neu zu nähen.
   *[other] Erledigt: Die Naht von { $piece } ist aufzutrennen und mit { $lap } Zugabe neu zu nähen.
}
way-trim-done = { $joining ->
    [lapped] { $n ->
        [0] Erledigt: Alle Vierer werden jetzt auf { $size } geschnitten.
        [one] Erledigt: Alle Vierer werden jetzt auf { $size } geschnitten, und eine Verbindung wird schmaler überlappt. Ihr Schritt zeigt es an.
       *[other] Erledigt: Alle Vierer werden jetzt auf { $size } geschnitten, und { $n } Verbindungen werden schmaler überlappt. Ihre Schritte zeigen es an.
    }
   *[other] { $n ->
        [0] Erledigt: Alle Vierer werden jetzt auf { $size } geschnitten.
        [one] Erledigt: Alle Vierer werden jetzt auf { $size } geschnitten, und eine Verbindung bekommt weniger Nahtzugabe. Ihr Schritt zeigt es an.
       *[other] Erledigt: Alle Vierer werden jetzt auf { $size } geschnitten, und { $n } Verbindungen bekommen weniger Nahtzugabe. Ihre Schritte zeigen es an.
    }
}
way-to-edge-done = Erledigt: { $piece } und { $place } haben den Platz getauscht; was fehlt, verdeckt die Einfassung.
way-another-done = Erledigt: { $piece } ist beiseitegelegt; es ist noch einmal zu machen.
opening-square-sewn = { $n ->
    [one] Zuerst eine Naht auftrennen, bevor das neue { $piece } hineinkommt
   *[other] Zuerst { $n } Nähte auftrennen, bevor das neue { $piece } hineinkommt
}
opening-lap-sewn = { $n ->
    [one] Zuerst eine Naht auftrennen
   *[other] Zuerst { $n } Nähte auftrennen
}
opening-lap-glued = { $n ->
    [one] Zuerst die geklebte Überlappung lösen
   *[other] Zuerst { $n } geklebte Überlappungen lösen
}
opening-lift = { $n ->
    [one] Die Überlappung von { $laps } anfeuchten, eine Minute warten, langsam lösen und beide Kanten trocknen lassen.
   *[other] Jede Überlappung anfeuchten, eine Minute warten, langsam lösen und beide Kanten trocknen lassen: { $laps }.
}
opening-square-glued = { $n ->
    [one] Zuerst eine geklebte Überlappung lösen, bevor das neue { $piece } hineinkommt
   *[other] Zuerst { $n } geklebte Überlappungen lösen, bevor das neue { $piece } hineinkommt
}
opening-all = { $a } von { $b } trennen: die ganze Naht, { $length }.
opening-part = { $a } von { $b } trennen: nur { $length }, entlang { $along }.
opening-binding = Zuerst die Einfassung an { $along } lösen, auf beiden Seiten ein wenig weiter.
relabel = Beschrifte neu mit Kreide: { $list }.
relabel-many = Beschrifte { $n } Quadrate neu mit Kreide.
relabel-row = Reihe { $row }: { $list }.
relabel-one = { $from } ist jetzt { $to }
way-lap-at = { $joining ->
    [lapped] Bei { $piece }: nur { $lap } überlappen, nicht { $usual }.
   *[other] Bei { $piece }: nur { $lap } Nahtzugabe, nicht { $usual }.
}
way-lap-between = { $joining ->
    [lapped] Wo { $a } auf { $b } trifft: nur { $lap } überlappen, nicht { $usual }.
   *[other] Wo { $a } auf { $b } trifft: nur { $lap } Nahtzugabe, nicht { $usual }.
}
way-new-lap = { $joining ->
    [lapped] Neue Überlappung: { $lap }.
   *[other] Neue Nahtzugabe: { $lap }.
}
way-unpick = { $n ->
    [one] Eine Naht auftrennen, { $length }.
   *[other] { $n } Nähte auftrennen, zusammen { $length }.
}
way-unpick-then = { $n ->
    [one] Um es einzusetzen, wird eine Naht aufgetrennt, { $length }.
   *[other] Um es einzusetzen, werden { $n } Nähte aufgetrennt, zusammen { $length }.
}
way-another-takes = { $lacking ->
    [0] Es braucht { $n } Quadrate; so viele sind übrig.
   *[other] Es braucht { $n } Quadrate; davon fehlen { $lacking } auf dem Stapel und beim Ersatz.
}
way-nothing-undone = Nichts Genähtes wird aufgetrennt.
way-fabric-anew = Der aufgeklebte Stoff ist mit verloren: Kleb ein neues Quadrat aus { $print } auf.
way-fabric-anew-both = Der auf beiden Seiten aufgeklebte Stoff ist mit verloren: Kleb zwei neue Quadrate aus { $print } auf.
way-fabric-anew-both-of = Der auf beiden Seiten aufgeklebte Stoff ist mit verloren: Das braucht zwei neue Quadrate aus { $print }; { $left ->
    [0] keins ist mehr da.
    [one] eins ist noch da.
   *[other] { $left } sind noch da.
}
way-fabric-anew-of = { $left ->
    [0] Der aufgeklebte Stoff ist mit verloren, und kein anderes Quadrat aus { $print } ist mehr da.
    [one] Der aufgeklebte Stoff ist mit verloren: Kleb ein neues Quadrat aus { $print } auf; eins ist noch da.
   *[other] Der aufgeklebte Stoff ist mit verloren: Kleb ein neues Quadrat aus { $print } auf; { $left } sind noch da.
}
way-patch-laid-on = Keine Überlappung hält die Kanten dieses Flickens. Schneid ihn auf { $side } zu, damit er keine Überlappung berührt, und näh ihn ringsum fest, wenn er abgekühlt ist: Der Kleber allein löst sich in der Wäsche. Reicht der Schaden weiter nach außen, nimm einen anderen Weg.
way-patch-round = Keine Überlappung hält die Kanten dieses Flickens; näh ihn deshalb ringsum fest, wenn er abgekühlt ist: Der Kleber allein löst sich in der Wäsche.
way-size = Die Decke wird { $size } messen.
way-minutes = { $n ->
    [0] Kaum Arbeit.
    [one] Etwa eine Minute Arbeit, nach unserer Schätzung.
   *[other] Etwa { $n } Minuten Arbeit, nach unserer Schätzung.
}
aside = Übrig bleibt { $piece } ({ $size }): für einen Kissenbezug oder eine Ecke der nächsten Decke.
aside-several = Übrig bleiben { $list }: für Kissenbezüge oder Ecken der nächsten Decke.
stays-lapped = Unverändert, wie geklebt oder genäht, mit { $lap }: { $pieces }.
stays-glued = { $n ->
    [one] Eine Verbindung davon ist nur geklebt: Du kannst sie neu überlappen, siehe „Hier stimmt etwas nicht“ bei ihrem Schritt.
   *[other] { $n } davon sind nur geklebt: Du kannst sie neu überlappen, siehe „Hier stimmt etwas nicht“ bei ihrem Schritt.
}
trim-again = Noch einmal zu schneiden, auf { $size }: { $pieces }.
trim-now = Noch auf Maß zu schneiden, auf { $size }: { $pieces }.
marks-anew = Überlappungen, die für zu kleine Stücke angezeichnet sind, werden neu berechnet.
stays-short = Kleiner als das neue Maß und bleiben bei { $size }: { $pieces }.
moved = { $from } kommt auf den Platz von { $to }: neu mit Kreide beschriften.

## Anders überlegt

compare-finished = Fertiges Maß
compare-squares = Noch zu schneiden
compare-spares = Ersatzquadrate
compare-seams = Noch zu nähen
compare-time = Noch zu arbeiten
time-own = etwa { $middle } ({ $low } bis { $high }, nach deinem eigenen Tempo)
time-usual = etwa { $middle } ({ $low } bis { $high }; geschätzt, bis dein eigenes Tempo bekannt ist)
hours-shortly = { $time } h
hours = { $h ->
    [0] { $m } Minuten
   *[other] { $m ->
        [0] { $h } Std.
       *[other] { $h } Std. { $m } Min.
    }
}

## Ein Maß halten, und das Ganze

hold-left = { $n ->
    [0] Keine Verbindung zwischen Vierern ist mehr offen; die Überlappung kann nichts mehr ändern.
    [one] Eine Verbindung zwischen Vierern ist noch offen.
   *[other] { $n } Verbindungen zwischen Vierern sind noch offen.
}
hold-fringe = Je Kante bleiben { $fringe } für die Fransen.
hold-choose = Den Rest mit { $lap } verbinden
figure-foreseen = Soll messen
whole-across-exact = Breite: { $foreseen }, genau was sie messen soll.
whole-down-exact = Höhe: { $foreseen }, genau was sie messen soll.
whole-across = Breite: { $measured }. Sie soll { $foreseen } messen: { $off }.
whole-down = Höhe: { $measured }. Sie soll { $foreseen } messen: { $off }.
whole-within = So viel gibt Stoff beim Nähen nach (bis 2 %, allgemeine Erfahrung). Verbindungen, die etwas neben der Markierung genäht sind, machen dasselbe aus.
whole-beyond = Das ist mehr, als Stoff beim Nähen meist nachgibt (2 %, allgemeine Erfahrung). Miss einige Verbindungen nach: Manche sind vielleicht breiter oder schmaler genäht als angezeichnet.
whole-each = { $laps ->
    [one] Es liegt alles an einer Verbindung: { $each }.
   *[other] Auf { $laps } Verbindungen verteilt ist das je { $each }.
}
whole-washed-unknown = Vor dem Waschen wurde sie nicht gemessen; darum lässt sich nicht trennen, was die Wäsche und was das Nähen ausmacht. Stoff läuft in der Wäsche meist ein.
whole-washed-across = Breite: vorher { $before }, nach { $n ->
    [one] einer Wäsche
   *[other] { $n } Wäschen
} { $now }: { $by } { $how ->
    [less] weniger
   *[more] mehr
} ({ $percent } %).
whole-washed-down = Höhe: vorher { $before }, nach { $n ->
    [one] einer Wäsche
   *[other] { $n } Wäschen
} { $now }: { $by } { $how ->
    [less] weniger
   *[more] mehr
} ({ $percent } %).
whole-washed-across-same = Breite: { $size }, wie vor der Wäsche.
whole-washed-down-same = Höhe: { $size }, wie vor der Wäsche.
whole-washed-usual = Stoff läuft in der Wäsche meist ein. Falsch genäht ist deswegen nichts.
figure-before-wash = Vor der Wäsche
whole-kept = { $n ->
    [0] Vor der Wäsche: { $size }.
   *[other] Nach Wäsche { $n }: { $size }.
}
whole-kept-change = { $n ->
    [0] Vor der Wäsche: { $size }; Änderung { $across } % in der Breite, { $down } % in der Höhe.
   *[other] Nach Wäsche { $n }: { $size }; Änderung { $across } % in der Breite, { $down } % in der Höhe (ISO 5077).
}
picture-blocks = { $n ->
    [0] Die Vierer, wie sie liegen: Keiner ist zu klein
    [one] Die Vierer, wie sie liegen: Einer ist zu klein
   *[other] Die Vierer, wie sie liegen: { $n } sind zu klein
}

## Plan und Raster

plan-change = Plan ändern
cloth-gives = { $pairs ->
    [one] Eine Jeans gibt etwa { $low } bis { $high } Quadrate; gemessen lässt es sich genauer sagen.
   *[other] { $pairs } Jeans geben etwa { $low } bis { $high } Quadrate; gemessen lässt es sich genauer sagen.
}
cloth-covers = { $n ->
    [one] Der Stoff bedeckt eine Seite eines Quadrats.
   *[other] Der Stoff bedeckt { $n } Seiten von Quadraten.
}
cloth-enough = Deine Jeans reichen dafür.
cloth-perhaps = { $most ->
    [one] Deine Jeans reichen vielleicht. Geben die Beine wenig her, braucht es noch eine.
   *[other] Deine Jeans reichen vielleicht. Geben die Beine wenig her, braucht es noch { $most }.
}
cloth-more = { $n ->
    [one] Du brauchst noch eine Jeans dieser Größe.
   *[other] Du brauchst noch { $n } Jeans dieser Größe.
}
cloth-more-range = Du brauchst noch { $least } bis { $most } Jeans dieser Größe.
cloth-pairs = { $n ->
    [one] Du brauchst etwa eine Jeans.
   *[other] Du brauchst etwa { $n } Jeans.
}
cloth-pairs-range = Du brauchst etwa { $least } bis { $most } Jeans.
cloth-never = Jeans dieser Größe geben nicht genug Quadrate dafür.
cloth-takes = Das braucht { $n } Quadrate, { $spares } als Ersatz und { $binding } Einfassung{ $strips ->
    [0] .
   *[other] , für die bis zu { $strips } weitere Quadrate zerschnitten werden.
}
grid-uses = { $left ->
    [0] Braucht alle { $n } Quadrate.
    [one] Braucht { $n } Quadrate, eins bleibt übrig.
   *[other] Braucht { $n } Quadrate, { $left } bleiben übrig.
}
grid-takes = { $n ->
    [one] Braucht ein Quadrat.
   *[other] Braucht { $n } Quadrate.
}
grid-width = Breite: { $off }.
grid-height = Höhe: { $off }.
grid-odd-across = Bei ungerader Zahl in der Breite bleibt neben den Vierern eine Spalte aus Paaren.
grid-odd-down = Bei ungerader Zahl in der Höhe bleibt unter den Vierern eine Reihe aus Paaren.

## Bilder, in Worten

picture-front = { $name } von vorn
picture-back = { $name } von hinten
picture-step = { $task }: { $piece }
picture-measured = { $piece }, gemessen { $size }, mit dem, was abzuschneiden ist
picture-trim = { $length } ab
picture-missing = { $length } zu wenig
picture-over = oben
picture-under = darunter
picture-begin = Anfang
picture-section = Die Verbindung im Querschnitt, maßstäblich: Überlappung oder Zugabe { $lap }, Fransen { $fringe }
picture-grid = Quadrate: { $across } breit und { $down } hoch, fertig { $size }

## Verlauf

history-undo = Zurückgenommen: { $what }
history-redo = Wiederholt: { $what }
did-begin = Begonnen: { $name }, { $grid }
did-rename = Heißt jetzt { $name }
did-archive = Weggelegt
did-unarchive = Wieder hervorgeholt
did-change-plan = Plan geändert: { $grid }, { $joining ->
    [lapped] Überlappung
   *[other] Nahtzugabe
} { $lap }, schneiden auf { $trim }
did-face = { $piece }: vorn { $front }, hinten { $back }
did-faces = { $n ->
    [one] Die Seiten eines Quadrats geändert
   *[other] Die Seiten von { $n } Quadraten geändert
}
did-cloth = Stoffe geändert
did-cut = Zugeschnitten: { $piece }
did-lap-halves = Hälften überlappt und geklebt: { $piece }
did-press-halves = Überlappung der Hälften gebügelt: { $piece }
did-cool-halves = Überlappung der Hälften abgekühlt: { $piece }
did-stitch-halves = Hälften zum Quadrat genäht: { $piece }
did-cut-fabric = Stoffquadrate zugeschnitten: { $piece }
did-cover-front = Stoff vorn aufgeklebt: { $piece }
did-cover-back = Stoff hinten aufgeklebt: { $piece }
did-press-cover = Gebügelt: { $piece }
did-cool-cover = Abgekühlt: { $piece }
did-stitch-patch = Flicken festgenäht: { $piece }
did-dot = Überlappt und geklebt: { $piece }
did-press-lap = Überlappung gebügelt: { $piece }
did-cool-lap = Überlappung abgekühlt: { $piece }
did-pin = Gesteckt: { $piece }
did-stitch = Genäht: { $piece }
did-press-seam = Naht gebügelt: { $piece }
did-press-block = Flach gebügelt: { $piece }
did-square-up = Auf Maß geschnitten: { $piece }, { $size }
did-unmeasured = { $n ->
    [one] { $what } (eins davon nicht gemessen)
   *[other] { $what } ({ $n } davon nicht gemessen)
}
sizes-differ = jedes in seinem eigenen Maß
did-trim-edge = Ganze Kante gebügelt und begradigt
did-cut-binding = Einfassstreifen geschnitten
did-join-binding = Einfassstreifen verbunden
did-press-binding = Einfassung gefaltet und gebügelt
did-glue-binding = Einfassung um die Kante gelegt
did-stitch-binding = Einfassung genäht
did-snip = Nahtzugaben eingeschnitten
did-wash = Gewaschen
did-clip = Fäden abgeschnitten
did-move-square = Das lose Quadrat von { $from } geht an { $to }; { $from } ist neu zuzuschneiden
did-use-spares = Ersatz genommen: { $piece }
did-count-spares = { $n ->
    [0] Keine Ersatzquadrate
    [one] Ein Ersatzquadrat vorhanden
   *[other] { $n } Ersatzquadrate vorhanden
}
did-measure = Gemessen: { $piece }, { $size }
did-outline = Kanten gemessen: { $piece }
did-mark-lap = { $joining ->
    [lapped] Überlappung angezeichnet, wo { $a } auf { $b } trifft: { $lap }
   *[other] Nahtzugabe angezeichnet, wo { $a } auf { $b } trifft: { $lap }
}
did-mark-laps = { $joining ->
    [lapped] { $n ->
        [one] Eine Überlappung neu angezeichnet
       *[other] { $n } Überlappungen neu angezeichnet
    }
   *[other] { $n ->
        [one] Eine Nahtzugabe neu angezeichnet
       *[other] { $n } Nahtzugaben neu angezeichnet
    }
}
did-unpick = { $more ->
    [0] Wieder geöffnet: { $piece }, { $length }
    [one] Wieder geöffnet: { $piece } und eine weitere Verbindung, { $length }
   *[other] Wieder geöffnet: { $piece } und { $more } weitere Verbindungen, { $length }
}
did-lift = { $more ->
    [0] Abgelöst, nur der Kleber hielt: { $piece }
    [one] Abgelöst, nur der Kleber hielt: { $piece } und eine weitere Verbindung
   *[other] Abgelöst, nur der Kleber hielt: { $piece } und { $more } weitere Verbindungen
}
did-lay-on = Stoff wird aufgesetzt, wo schon genäht ist: { $piece }
did-not-lay-on = Stoff wird nicht mehr aufgesetzt: { $piece }
did-patch = { $piece } bekommt im genähten Stück einen Flicken: { $why }
did-move = { $n ->
    [2] { $from } und { $to } haben den Platz getauscht
   *[other] { $n } Stücke haben den Platz getauscht, zuerst { $from } mit { $to }
}
did-turn = { $quarters ->
    [1] { $piece } um ein Viertel im Uhrzeigersinn gedreht
    [2] { $piece } halb herumgedreht
   *[other] { $piece } um ein Viertel gegen den Uhrzeigersinn gedreht
}
did-turn-several = { $n } Stücke gedreht
did-flip = Gewendet: { $pieces }
did-let-go = Wieder frei: { $pieces }
did-wish = Stoff geplant: { $front ->
    [one] ein Quadrat
   *[other] { $front } Quadrate
} vorn, { $back } hinten
did-wish-bare = Kein Quadrat soll Stoff bekommen
did-set-aside = Beiseitegelegt: { $piece }
did-measure-whole = Ganze Decke gemessen: { $size }
did-heap = Auf dem Stapel: { $name }
did-take-heap = Vom Stapel genommen
did-cut-piece = Ein Stück von { $name } zugeschnitten: { $n ->
    [one] { $n } Quadrat
   *[other] { $n } Quadrate
}{ $parts }{ $strips ->
    [0] { "" }
    [one] , ein Einfassstreifen
   *[other] , { $strips } Einfassstreifen
}
did-cut-lines = { $n ->
    [0] Schnittliste eines Stücks von { $name } neu begonnen
    [one] Schnittliste eines Stücks von { $name }: erste Zeile erledigt
   *[other] Schnittliste eines Stücks von { $name }: erste { $n } Zeilen erledigt
}
did-scrap = Nähprobe, { $joining ->
    [lapped] Überlappung
   *[other] Nahtzugabe
} { $lap }: { $verdict }
did-plate = Öffnung der Stichplatte gemessen: { $opening }
did-gather = Bereitgelegt
did-ungather = Doch nicht bereit
did-spoil = { $piece } ist unbrauchbar: { $why }
did-note = Notiz: { $text }

## Rat zu einem Plan

error-advice-fringe = Die Fransen je Kante wären { $fringe } breit. So schmal reißt der Faden mit der Zeit aus (allgemeine Erfahrung).
error-advice-fringe-next = { $enough } lässt genug Fransen. Näh damit eine Probe; sie entscheidet.
error-advice-fringe-beyond = Keine Überlappung oder Nahtzugabe lässt auf so großen Quadraten { $least } Fransen je Kante: Es sind immer weniger als { $most }.
error-advice-fringe-beyond-next = Prüfe die Einheit der schmalsten Fransen: 3 mm, etwa ⅛ Zoll, sind üblich (allgemeine Erfahrung).
error-advice-odd = Eine ungerade Zahl lässt neben den Vierern einzelne Paare. Auch sie sind eingeplant.
error-advice-odd-next = Nichts zu tun; gerade Zahlen machen etwas weniger Arbeit.
error-advice-trim = Mit dieser Überlappung wird ein Vierer { $natural } groß: Auf { $trim } lässt er sich nicht schneiden.
error-advice-trim-next = Lass das Maß für die Vierer leer, oder wähle { $natural } oder weniger.
error-advice-twin = Eine Zwillingsnadel braucht zwei Garnrollen, und eine Seite ist immer die Nähseite. Bei { $spacing } Nadelabstand treffen die Nadeln die Stichplatte, wenn der Stich breiter eingestellt ist, als ihre Öffnung zulässt: Stell einen Geradstich ein, Nadel in der Mitte, und dreh einmal mit der Hand ganz herum.
error-advice-twin-next = Lass dieselbe Seite oben und dreh das Handrad einmal herum, bevor du anfängst. Zwei Reihen nacheinander mit einer einzelnen Nadel gehen ebenso; dann darf jede Seite oben liegen.
error-advice-twin-hidden = Eine Zwillingsnadel hält in einer verdeckten Naht die Nahtzugaben zwischen ihren zwei Reihen zusammen: Die Naht lässt sich nicht auseinanderbügeln, und wo sie gezogen wird, sieht man die Stiche (allgemeine Erfahrung).
error-advice-twin-hidden-next = Für eine verdeckte Naht ist eine einzelne Nadel üblich. Bei der Zwillingsnadel bügle jede Naht zu einer Seite.
error-advice-lap-large = Ein Drittel jedes Quadrats oder mehr verschwindet in den Verbindungen.
error-advice-lap-large-next = Schmalere Verbindungen oder größere Quadrate geben mehr Decke für den Stoff.

## Was getippt wurde

error-typed-empty = Hier steht noch nichts.
error-typed-empty-next = Schreib ein Maß wie { $example }.
error-typed-not-a-length = Das kann Lapwork nicht als Maß lesen.
error-typed-not-a-length-next = Schreib es wie { $example }.
error-typed-negative = Ein Maß kann nicht kleiner als null sein.
error-typed-negative-next = Lass das Minus weg: { $example }.
error-typed-ambiguous = Das lässt sich auf zwei Arten lesen.
error-typed-ambiguous-next = Schreib die Einheit und nur ein Komma: { $example }.
error-typed-off-the-marks = Das fällt auf keinen Strich eines Lineals.
error-typed-off-the-marks-next = Das nächste Sechzehntel ist { $nearest }.
error-typed-too-long = Das ist länger als 100 Meter.
error-typed-too-long-next = Prüfe die Einheit: { $example }.
error-typed-unknown-unit = Die Einheit „{ $unit }“ kennt Lapwork nicht.
error-typed-unknown-unit-next = Nimm Zoll, Fuß, Yard, mm, cm oder m, wie in { $example }.
error-typed-not-a-count = Das ist keine ganze Zahl.
error-typed-not-a-count-next = Schreib eine Zahl wie 6.

## Pläne, die nicht gehen

error-plan-side = Die Kante des Quadrats ist zu groß oder zu klein.
error-plan-side-next = Wähle eine Kante von { $least } bis { $most }.
error-plan-grid = Das sind zu viele Quadrate oder keine.
error-plan-grid-next = Wähle in jeder Richtung 1 bis { $most } Quadrate.
error-plan-lap = Die Überlappung oder Nahtzugabe ist null, oder sie nimmt das halbe Quadrat oder mehr.
error-plan-lap-next = Wähle eine Überlappung unter der halben Kante des Quadrats; bei Jeansstoff sind { $usual } üblich.
error-plan-between = Die Überlappung zwischen Vierern ist null oder lässt nichts vom Quadrat übrig.
error-plan-between-next = Wähle eine Überlappung unter der halben Kante des Quadrats, oder lass das Feld leer für überall dieselbe.
error-plan-stitch = Der Stich ist breiter als das, was er halten muss.
error-plan-stitch-next = Wähle einen schmaleren Stich oder eine breitere Überlappung.
error-plan-stitch-length = So lange Stiche näht keine Maschine.
error-plan-stitch-length-next = Wähle von { $least } bis { $most }; auf Jeansstoff sind 3 bis 3,5 mm üblich.
error-plan-trim = Auf dieses Maß lässt sich ein Vierer nicht schneiden.
error-plan-trim-next = Wähle ein Maß, das größer als ein Quadrat und höchstens so groß wie zwei ist, oder lass das Feld leer.
error-plan-binding = So lässt sich die Einfassung nicht schneiden.
error-plan-binding-next = Wähle einen Streifen, der mindestens { $least } und höchstens so breit ist wie ein Quadrat, und Stücke, die länger sind als zwei Überlappungen.
error-plan-counts = So viele Wäschen oder so langes Abkühlen fasst dieser Plan nicht.
error-plan-counts-next = Wähle bis zu 9 Wäschen und bis zu 240 Minuten.

## Was nicht geht

error-beginning = Die Decke wird einmal begonnen, vor allem anderen.
error-beginning-next = Geh zurück zur Liste der Decken und öffne sie, oder beginne eine neue.
error-name = Ein Name braucht 1 bis { $most } Zeichen.
error-name-next = Schreib einen kurzen Namen, etwa Sofadecke.
error-words = Eine Notiz braucht 1 bis { $most } Zeichen.
error-words-next = Schreib eine kürzere Notiz, oder zwei.
error-no-such-piece = Ein Stück { $piece } gibt es in dieser Decke nicht.
error-no-such-piece-next = Öffne „Teile“ und wähle dort ein Stück.
error-nothing = Es gibt nichts zu ändern.
error-nothing-next = Wähle ein Stück, das nicht schon so ist.
error-not-its-task = { $piece }: „{ $task }“ ist schon erledigt oder nicht nötig.
error-not-its-task-next = Sieh nach dem nächsten Schritt; Zurücknehmen holt einen Schritt zurück.
error-first = { $piece }: „{ $task }“ geht noch nicht.
error-first-next = Vorher kommt { $before }: { $needs }.
error-already-cut = { $squares ->
    [one] Ein Quadrat ist schon im alten Maß zugeschnitten.
   *[other] { $squares } Quadrate sind schon im alten Maß zugeschnitten.
}
error-already-cut-next = Bleib bei diesem Maß, oder beginne mit dem neuen eine andere Decke.
error-denim-cut = { $piece } ist schon zugeschnitten, also bleibt sein Jeansstoff.
error-denim-cut-next = Wähle Quadrate, die noch zuzuschneiden sind; ein loses Quadrat lässt sich wenden.
error-cut-larger = Um so viel größer schneidet man Quadrate nicht zu.
error-cut-larger-next = Wähle eine kleine Zugabe, oder nichts.
error-pack-small = Quadrate von { $side } sind zu klein für diese Decke: Geplant sind { $wanted }.
error-pack-small-next = Sie passen zu einer Decke aus Quadraten von { $side }: Ändere den Plan, bevor etwas geschnitten ist. Mitten auf einem Quadrat von { $wanted } bliebe ringsum { $round } Jeans frei, wo die Überlappungen ihre Kanten nur stellenweise erfassen; deshalb nimmt dieser Plan sie nicht. Bis { $most } liegen sie als Flicken frei davon. Eine Packung ab { $wanted } lässt sich zuschneiden.
error-pack-small-denim = Quadrate von { $side } sind zu klein für diese Decke: Geplant sind { $wanted }.
error-pack-small-denim-next = Sie passen zu einer Decke aus Quadraten von { $side }: Ändere den Plan, bevor etwas geschnitten ist. Eine Packung ab { $wanted } lässt sich zuschneiden.
error-pieced = So viele Quadrate aus zwei Hälften gibt dieses Stück nicht her.
error-pieced-next = Zähl die Hälftenpaare noch einmal, und wähle vor dem Zuschneiden die Art mit Hälften.
error-pack-mixed = { $print } hat schon Quadrate einer anderen Größe.
error-pack-mixed-next = Flicken und ganze Quadrate eines Stoffs werden getrennt gehalten: Leg diese als eigenen Stoff an.
error-same-name = Zwei davon hießen { $name }.
error-same-name-next = Gib jedem Stoff und jedem Jeansstoff einen eigenen Namen, damit eine Liste sagen kann, welchen sie meint.
error-patch-caught = Flicken von { $side } würden in diesem Plan stellenweise von den Überlappungen erfasst.
error-patch-caught-next = Wähle Überlappungen und ein Schnittmaß, die sie frei lassen: bei diesen bis { $most }. Oder nimm die Flicken erst von den Seiten und vom Stapel.
error-pack-side = So groß oder so klein sind fertig zugeschnittene Quadrate nicht.
error-pack-side-next = Miss die Kante eines Quadrats, und sieh nach der Einheit.
error-edges = Von diesem Stoff bliebe nichts, wenn die Kanten begradigt sind.
error-edges-next = Prüfe die Einheiten und wie viel an jeder Kante wegkommt.
error-already-made = { $piece } ist schon gemacht und hat in diesem Plan keinen Platz.
error-already-made-next = Wähle ein Raster und eine Reihenfolge, in denen es bleibt, oder nimm alles zurück bis davor.
error-joined = { $piece } ist schon mit anderen verbunden.
error-joined-next = Was genäht ist, bleibt genäht. Wähle ein Quadrat, das noch lose ist.
error-glued = Bei { $piece } ist der Stoff dort schon aufgeklebt.
error-glued-next = Wähle ein anderes Quadrat, oder nimm das Kleben zurück.
error-stock = { $have ->
    [0] Von { $print } gibt es kein Quadrat.
    [one] Von { $print } gibt es nur ein Quadrat.
   *[other] Von { $print } gibt es nur { $have } Quadrate.
}
error-stock-next = Wähle weniger, einen anderen Stoff, oder berichtige die Menge in der Liste der Stoffe.
error-cloth = Diese Liste der Stoffe geht nicht: Ein verwendeter fehlt, eine Farbe ist keine Farbe, oder es sind über { $most }.
error-cloth-next = Behalte jeden verwendeten Stoff; gib jedem einen Namen und eine Farbe.
error-spares = { $have ->
    [0] Es gibt kein Ersatzquadrat.
    [one] Es gibt ein Ersatzquadrat.
   *[other] Es gibt { $have } Ersatzquadrate.
}
error-spares-next = Schneide ein neues Quadrat, oder berichtige die Zahl der Ersatzquadrate unter „Teile“.
error-not-measurable = { $piece } lässt sich jetzt nicht zum Schneiden auf Maß messen.
error-not-measurable-next = Miss einen Vierer oder ein einzelnes Paar, wenn es genäht und noch nicht auf Maß geschnitten ist.
error-pile = Das liegt nicht auf dem Stapel, oder der Stapel ist voll.
error-pile-next = Geh zurück zum Stapel und wähle dort ein Stück.
error-cut-up = Dieses Stück ist schon zugeschnitten.
error-cut-up-next = Was gezählt wurde, gilt; Zurücknehmen holt die letzte Zählung zurück.
error-many-squares = So viele Quadrate gibt das nicht her.
error-many-squares-next = Zähl noch einmal; mehr als { $most } werden nicht angenommen.
error-weight = Das ist kein Stoffgewicht.
error-weight-next = Schreib es wie 14 oz oder 475 g/m².
error-scrap = Diese Nähprobe gibt es nicht.
error-scrap-next = Wähle eine aus der Liste.
error-piece-few = Ein Umriss braucht mindestens zwei Breiten.
error-piece-few-next = Miss am Saum und am Bund, und ein-, zweimal dazwischen.
error-piece-many = Das ist mehr, als ein Umriss fasst.
error-piece-many-next = Ein paar Breiten und ein paar Stellen zum Aussparen genügen.
error-piece-far = Breite { $n } liegt zu weit draußen.
error-piece-far-next = Prüfe die Einheit.
error-piece-order = Breite { $n } liegt nicht über der vorigen.
error-piece-order-next = Ordne die Breiten vom Saum aufwärts.
error-piece-crossing = Bei Breite { $n } kreuzen sich die Kanten.
error-piece-crossing-next = Eine Breite kann nicht kleiner als null sein.
error-piece-no-width = Das Stück hat nirgends eine Breite.
error-piece-no-width-next = Miss es an der breitesten Stelle.
error-piece-no-width-at = Breite { $n } ist null.
error-piece-no-width-at-next = Miss dort quer über den Stoff, oder nimm diese Breite heraus.
error-piece-too-wide = Breite { $n } ist breiter, als solcher Stoff liegt.
error-piece-too-wide-next = Prüfe die Zahl und ihre Einheit.
error-piece-zone-far = Stelle { $n } zum Aussparen liegt zu weit draußen.
error-piece-zone-far-next = Prüfe die Einheit.
error-piece-zone-empty = Stelle { $n } zum Aussparen hat keine Größe.
error-piece-zone-empty-next = Schreib, wo sie anfängt und aufhört.
error-piece-zone-outside = Stelle { $n } zum Aussparen liegt neben dem Stück.
error-piece-zone-outside-next = Höhen zählen vom Saum, Breiten von der linken Kante.
error-not-whole = Die Decke ist noch nicht ganz zusammengenäht.
error-not-whole-next = Miss die ganze Decke, wenn die letzte Verbindung genäht ist.
error-unlikely = { $given } ist unwahrscheinlich: Geplant war { $planned }.
error-unlikely-next = Prüfe die Einheit und miss noch einmal.
error-not-cut = { $piece } ist noch nicht zugeschnitten.
error-not-cut-next = Nur ein zugeschnittenes Quadrat kann unbrauchbar werden.
error-outline-impossible = Solche Kanten und Diagonalen hat kein Block.
error-outline-impossible-next = Miss die Kanten und beide Diagonalen noch einmal.
error-outline-open = Diese Maße passen nicht zusammen: Sie liegen { $by } auseinander.
error-outline-open-next = Miss { $line } noch einmal.
error-nothing-to-unpick = { $piece } hat keine Naht zum Auftrennen oder ist schon weiter verbunden.
error-nothing-to-unpick-next = Wähle ein Stück, das genäht und noch lose ist.
error-lap-too-narrow = Eine Überlappung von { $lap } lässt zu wenig Fransen.
error-lap-too-narrow-next = { $least } ist das Schmalste, das hält; oder ändere im Plan „Fransen mindestens“.
error-not-neighbours = { $a } und { $b } sind keine Nachbarn, die noch zu verbinden sind.
error-not-neighbours-next = Wähle zwei, die nebeneinander liegen und noch nicht genäht sind.
error-covered = { $piece } hat auf dieser Seite schon Stoff.
error-covered-next = Kleb den Stoff auf die andere Seite, oder setz ein anderes Quadrat ein.
error-wishes = Es sollen mehr Quadrate Stoff bekommen, als die Decke hat.
error-wishes-next = Wähle auf jeder Seite höchstens { $most }.
error-pinned = { $piece } behält seinen Platz.
error-pinned-next = Wähle zuerst „Freigeben“.
error-not-turnable = { $piece } lässt sich so nicht drehen.
error-not-turnable-next = Ein genähter Vierer lässt sich um ein Viertel drehen, ein Paar halb herum; beide nicht mehr, wenn sie mit anderen verbunden sind.
error-layout = Diese Anordnung passt nicht mehr zur Decke: Bei { $piece } ist es anders.
error-layout-next = Lass neue Anordnungen suchen.
error-not-swappable = { $a } und { $b } können den Platz nicht tauschen.
error-not-swappable-next = Wähle zwei von gleicher Form, die noch nicht mit anderen verbunden sind.
error-nothing-to-undo = Es gibt nichts zurückzunehmen.
error-nothing-to-undo-next = Jeder Schritt bisher steht im Verlauf.
error-nothing-to-redo = Es gibt nichts zu wiederholen.
error-nothing-to-redo-next = Nur was eben zurückgenommen wurde, lässt sich wiederholen.

## Dateien

error-file-not-a-throw = Das ist keine Datei einer Decke.
error-file-not-a-throw-next = Wähle eine Datei namens throw.jsonl, die Lapwork geschrieben hat.
error-file-newer = Diese Decke hat ein neueres Lapwork geschrieben (Dateiversion { $version }).
error-file-newer-next = Öffne sie mit jener Version; hier bleibt sie unberührt.
error-file-line = Die Datei der Decke ist in Zeile { $line } beschädigt; danach folgen unbeschädigte Zeilen.
error-file-line-next = Sie bleibt unberührt. Nimm eine frühere Kopie, oder heb die Datei für jemanden auf, der sie reparieren kann.
error-file-out-of-order = Zeile { $line } der Datei folgt nicht aus den Zeilen davor.
error-file-out-of-order-next = Sie bleibt unberührt. Nimm eine frühere Kopie, oder heb die Datei für jemanden auf, der sie reparieren kann.
error-file-empty = Die Datei der Decke hat keinen Anfang.
error-file-empty-next = Sie bleibt unberührt. Nimm eine frühere Kopie.

## Der Kleiderstapel und der Zuschnitt

figure-wanted = Benötigte Quadrate
figure-cut-for-it = Zugeschnitten
figure-open = Noch zuzuschneiden
figure-spares = Übrig
figure-to-come = Der Stapel gibt noch
figure-keep-back = Zurückzulegende Ersatzquadrate
figure-strips-open = Einfassstreifen zu schneiden
strips-of = { $open } von { $wanted }
figure-patch = Flicken
figure-round-patch = Jeans ringsum
figure-squares-here = Quadrate daraus
figure-came-out = Gute Quadrate daraus
cut-came-of = Gezeichnet waren { $planned }; das Bild zeigt nicht, welche davon gut sind.
figure-strips-came-out = Einfassstreifen herausbekommen
pile-enough = { $over ->
    [0] Genau genug Jeansquadrate, keins übrig.
    [one] Genug Jeansquadrate: eins mehr, als die Decke braucht.
   *[other] Genug Jeansquadrate: { $over } mehr, als die Decke braucht.
}
pile-few-spares = { $over ->
    [0] Gerade genug Jeansquadrate, aber keins als Ersatz: Besser sind etwa { $keep } mehr, denn manches wird versengt oder verschnitten.
    [one] Genug Jeansquadrate: eins mehr, als die Decke braucht. Besser sind etwa { $keep } als Ersatz, denn manches wird versengt oder verschnitten.
   *[other] Genug Jeansquadrate: { $over } mehr, als die Decke braucht. Besser sind etwa { $keep } als Ersatz, denn manches wird versengt oder verschnitten.
}
pile-perhaps-uneven = Insgesamt reichen die Jeansquadrate vielleicht, aber nicht von jeder Jeans, wie sie jetzt verteilt sind: Was noch nicht gemessen ist, gibt zwischen { $low } und { $high }, und { $wanted } fehlen noch, die zum Zurücklegen mitgezählt.
pile-perhaps = Vielleicht genug Jeansquadrate: Was noch nicht gemessen ist, kann { $low } bis { $high } geben, und { $wanted } fehlen noch, die zum Zurücklegen mitgezählt. Mit jedem Messen und Schneiden wird es genauer.
pile-strips-cut = { $n ->
    [one] Der Einfassstreifen ist geschnitten.
   *[other] Alle { $n } Einfassstreifen sind geschnitten.
}
pile-strips-planned = { $n ->
    [one] Auch der Einfassstreifen kommt aus dem Stapel, { $size }.
   *[other] Auch die { $n } Einfassstreifen kommen aus dem Stapel, je { $size }.
}
pile-strips-lacking = { $lacking ->
    [one] Für die Einfassung reicht es nicht: Einer von { $n } Streifen, { $size }, braucht anderen Stoff.
   *[other] Für die Einfassung reicht es nicht: { $lacking } von { $n } Streifen, je { $size }, brauchen anderen Stoff.
}
pile-strips-over = { $n ->
    [one] Ein Einfassstreifen, der schon geschnitten ist, wird für die Einfassung nicht mehr gebraucht. Heb ihn zum Flicken auf.
   *[other] { $n } Einfassstreifen, die schon geschnitten sind, werden für die Einfassung nicht mehr gebraucht. Heb sie zum Flicken auf.
}
way-share-denims = Die Quadrate auf die vorhandenen Jeansstoffe verteilen
way-shorter-strips = { $n } Einfassstreifen zu { $size }
way-shorter-strips-joins = Die gibt der Stapel her. Die Einfassung hat dann { $n } Ansätze statt { $before }.
strips-cut-already = Schon geschnittene Streifen: { $cut } von { $wanted }, noch { $open }.
strips-all-cut = { $n ->
    [one] Der Streifen wurde mit den Quadraten geschnitten. Leg ihn bereit.
   *[other] Alle { $n } Streifen wurden mit den Quadraten geschnitten. Zähle sie und leg sie bereit.
}
strips-on-lap = Mit Streifen dieser Länge kommt ein Ansatz der Einfassung auf eine Verbindung der Quadrate oder auf eine Ecke, wo sie auch beginnt, und wird dort dick. Gibt der Stoff es her, mach zuvor unter „Plan“ den längsten Streifen etwas länger oder kürzer.
strips-from = { $n } aus { $what }
strips-from-pile = Aus dem Stapel: { $list }.
pile-uneven = Insgesamt genug Jeansquadrate, aber nicht von jedem Jeansstoff.
pile-short = { $short ->
    [one] Ein Jeansquadrat fehlt, dazu { $keep } als Ersatz.
   *[other] { $short } Jeansquadrate fehlen, dazu { $keep } als Ersatz.
}
pile-empty = Noch nichts auf dem Stapel. Leg ein Kleidungsstück, Stoff oder eine Packung Quadrate dazu.
pile-all-cut = Alle Jeansquadrate sind zugeschnitten.
pile-of-denim = { $denim }: noch { $open } zuzuschneiden, { $gives } gibt der Stapel noch her{ $short ->
    [0] .
   *[other] ; { $short } fehlen.
}
pile-estimate = Miss jedes Stück, bevor du es schneidest.
pile-range = Was noch nicht gemessen ist, kann { $low } bis { $high } Quadrate geben. Mit jedem Messen und Schneiden wird es genauer.
heap-denim = Für die Jeansquadrate
heap-denim-of = Für die Quadrate aus { $denim }
heap-fabric = Für { $print }
heap-gives = { $what }: { $n ->
    [one] { $n } Quadrat
   *[other] { $n } Quadrate
}{ $parts }{ $strips ->
    [0] { "" }
    [one] , ein Einfassstreifen
   *[other] , { $strips } Einfassstreifen
}
make-denim = Jeansquadrate
make-denim-of = Jeansquadrate: { $denim }
squares-parted = {" "}({ $whole } ganze + { $n } gestückelte)
number-about = etwa { $n }
cut-held = Alles Übrige wird berechnet, sobald du loslässt.
number-parted = { $n }{ $parts }
pack-patches = Jedes ist ein Flicken von { $side } mitten auf einem Jeansquadrat von { $wanted }: geklebt, ringsum festgenäht, ringsum { $round } Jeans, frei von den Überlappungen.
piece-expected = { $n ->
    [one] etwa { $n } Quadrat
   *[other] etwa { $n } Quadrate
}{ $parts }{ $strips ->
    [0] { "" }
    [one] , ein Einfassstreifen
   *[other] , { $strips } Einfassstreifen
}
piece-counted = Ergab { $n ->
    [one] { $n } Quadrat{ $parts }
   *[other] { $n } Quadrate{ $parts }
}{ $strips ->
    [0] { "" }
    [one] {" "}und einen Einfassstreifen
   *[other] {" "}und { $strips } Einfassstreifen
}
part-left-leg = Linkes Beinteil
part-right-leg = Rechtes Beinteil
part-front = Vorderteil
part-sleeve = Ärmel
part-back = Rückenteil
part-pocket = Gesäßtasche
part-waistband = Bund
part-start = Dieser Umriss ist nur ein Anfang, aus allgemeiner Erfahrung. Miss deinen.
add-pocket = Auch eine Gesäßtasche verwenden
add-waistband = Auch den Bund flach hinlegen
cut-small-strips = { $n ->
    [one] Einen Einfassstreifen gibt es noch.
   *[other] { $n } Einfassstreifen gibt es noch.
}
cut-small-patch = Ein Flicken von { $size } lässt sich daraus schneiden, für eine abgewetzte Stelle.
cut-small-pocket = Oder lass sie ganz und näh sie als Tasche auf ein Quadrat.
part-panel = Stoffbahn
part-sheet = Laken
part-cloth = Stoff
cloth-patches = Die Packung gibt { $n } Flicken von { $side }, jeder mitten auf einem Jeansquadrat, ringsum { $round } Jeans, und ringsum festgenäht.
cloth-fat-quarter = Fat Quarter
cloth-yardage = Baumwollstoff vom Ballen
cloth-piece = Ein anderes Stück
heap-cut-down = { $gives }. { $cut }
pack-cut-down = Quadrate von { $side } werden auf { $wanted } zugeschnitten: Jedes gibt { $n ->
    [one] eines
   *[other] { $n }
}{ $over ->
    [0] , und nichts bleibt übrig.
   *[other] , und Streifen von { $left } bleiben übrig.
}
part-pack = Packung
part-numbered = { $part } { $n }
garment-mens-jeans = Herrenjeans
garment-womens-jeans = Damenjeans
garment-childs-jeans = Kinderjeans
garment-jacket-back = Rücken einer Jeansjacke
garment-skirt = Jeansrock
garment-shirt = Hemd
garment-blouse = Bluse
garment-sheet = Bettlaken
size-small = Klein
size-medium = Mittel
size-large = Groß
zone-outseam = Wulst der Außennaht
zone-hem = Saum
zone-pocket = Tasche
zone-knee = Abgewetztes Knie
zone-hole = Loch
zone-stain = Fleck
zone-cut-edge = Schnittkante zum Begradigen
zone-selvedge = Webkante
zone-seam = Naht
heap-take = { $name } vom Stapel nehmen
piece-keep = Diesen Umriss sichern
mirror-left-leg = Das linke Bein ist gleich, gespiegelt
mirror-right-leg = Das rechte Bein ist gleich, gespiegelt
mirror-front = Das andere Vorderteil ist gleich, gespiegelt
mirror-sleeve = Der andere Ärmel ist gleich, gespiegelt
mirror-worn-left-leg = Eintragen, wo das linke Bein abgewetzt ist
mirror-worn-right-leg = Eintragen, wo das rechte Bein abgewetzt ist
mirror-worn-front = Eintragen, wo das andere Vorderteil abgewetzt ist
mirror-worn-sleeve = Eintragen, wo der andere Ärmel abgewetzt ist
worn-asked = Wo ist dieses Stück abgewetzt? Umriss, Saum und Nähte sind die des Gegenstücks, gespiegelt. Ein abgewetztes Knie, Löcher und Flecken wurden nicht übernommen: Trag sie hier ein.
worn-asked-marked = Wo ist dieses Stück abgewetzt? Umriss, Saum und Nähte sind die des Gegenstücks, gespiegelt. Abgewetzte Stellen wurden nicht übernommen. Hier schon eingetragen: { $places }. Verschiebe sie, trag weitere ein oder nimm sie heraus.
worn-nothing = Sonst ist nichts abgewetzt
knee-guessed = Das abgewetzte Knie im Bild ist eine Annahme, denn bisher hat niemand nachgesehen. Halt das Bein gegen das Licht und trag das Knie richtig ein oder nimm es heraus.
worn-heed = Noch niemand hat eingetragen, wo dieses Stück abgewetzt ist: Sieh es dir an, bevor du schneidest.
piece-worn-unsaid = { $gives }; abgewetzte Stellen noch nicht eingetragen
cut-row = { $title }. { $text }
cut-straight-title = Eine gerade Kante
cut-straight = Schneide quer, { $above } über dem { $low ->
    [hem] Saum
   *[edge] unteren Rand
}.
cut-binding-title = Einfassstreifen
cut-binding-line = { $size }, { $way ->
    [along] längs
   *[across] quer
} zum Stück.
cut-binding-begin = Beginne { $height }, { $side }.
cut-binding-at = { $low ->
    [cut] an der geraden Kante
    [straight] an der geraden Kante
    [hem] am Saum
   *[edge] am unteren Rand
}
cut-binding-above = { $above } über { $low ->
    [cut] der geraden Kante
    [straight] der geraden Kante
    [hem] dem Saum
   *[edge] dem unteren Rand
}
cut-binding-edge = seine linke untere Ecke dort auf der linken Kante
cut-binding-left = seine linke untere Ecke dort { $left } von der linken Kante
cut-binding-strip-edge = gleich rechts neben dem Streifen davor
cut-binding-strip = { $left } rechts vom Streifen davor
cut-strip-title = Streifen { $n }: { $squares ->
    [one] ein Quadrat
   *[other] { $squares } Quadrate
}{ $halves ->
    [0] { "" }
    [one] , eine Hälfte
   *[other] , { $halves } Hälften
}
cut-away = Schneide zuerst { $gap } als Abfall ab.
cut-across = Schneide quer, { $high } über dem { $from ->
    [hem] Saum
    [straight] geraden Rand
    [edge] unteren Rand
   *[cut] letzten Schnitt
}.
cut-turn-title = Dreh das Stück
cut-turn = Leg es um ein Viertel gedreht hin, { $end ->
    [hem] den Saum
   *[edge] den unteren Rand
} nach links, und schneide die Streifen der Länge nach.
cut-turn-label-free = Schreib jede Beschriftung mit dem oberen Rand der Buchstaben nach rechts. Mit aufrechter Schrift ausgelegt liegt ein Quadrat wie alle anderen. Anders gedreht läuft sein Köper anders herum, und es dehnt sich anders herum.
cut-turn-label-one-way = Schreib jede Beschriftung mit dem oberen Rand der Buchstaben nach rechts. Du willst den Fadenlauf in jedem Quadrat von oben nach unten: Leg jedes mit aufrechter Schrift hin.
cut-turn-label-by-turns = Schreib jede Beschriftung mit dem oberen Rand der Buchstaben nach rechts. Du willst den Fadenlauf von Quadrat zu Quadrat gedreht: Bei aufrechter Schrift läuft er von oben nach unten, bei liegender quer.
cut-halves-title = { $n ->
    [one] Eine Hälfte
   *[other] { $n } Hälften
}
cut-halves-across = Schneide aus dem Stoff { $lies ->
    [below] unter Streifen { $n }
    [above] über Streifen { $n }
   *[alone] selbst
} eine Reihe, { $high } hoch.
cut-half-beside = Dann gleich neben den Quadraten eine Hälfte, { $wide } breit.
cut-half-run = { $left } von der linken unteren Ecke an: { $count ->
    [one] eine Hälfte, { $wide } breit.
   *[other] { $count } Hälften, je { $wide } breit.
}
cut-half-run-edge = Von der linken unteren Ecke an: { $count ->
    [one] eine Hälfte, { $wide } breit.
   *[other] { $count } Hälften, je { $wide } breit.
}
cut-half-run-strip = { $left } rechts vom Einfassstreifen an: { $count ->
    [one] eine Hälfte, { $wide } breit.
   *[other] { $count } Hälften, je { $wide } breit.
}
cut-half-run-strip-edge = Gleich rechts neben dem Einfassstreifen: { $count ->
    [one] eine Hälfte, { $wide } breit.
   *[other] { $count } Hälften, je { $wide } breit.
}
cut-top-title = Eine gerade obere Kante
cut-top = Von hier an wird von der oberen Kante gemessen. Schneide quer, { $below } darunter.
cut-down-edge = Von hier an wird von der oberen Kante gemessen. Schneide quer, { $high } darunter.
cut-down = Schneide quer, { $high } unter dem letzten Schnitt.
way-plain = In Streifen vom unteren Rand aufwärts
way-both = Von beiden Kanten her
way-turned = Um ein Viertel gedreht
way-turned-both = Um ein Viertel gedreht, von beiden Kanten her
way-gives = { $n ->
    [one] { $n } Quadrat
   *[other] { $n } Quadrate
}{ $parts }{ $strips ->
    [0] { "" }
    [one] {" "}und { $strips } Einfassstreifen
   *[other] {" "}und { $strips } Einfassstreifen
}
way-more = { $name }: { $gives }, { $more ->
    [0] nicht mehr
    [one] eines mehr
   *[other] { $more } mehr
}
way-both-text = Die unteren Streifen werden vom unteren Rand aus gemessen, die anderen von der oberen Kante abwärts; was übrig ist, liegt dazwischen.
way-turned-text = Das Stück liegt auf der Seite, und seine Streifen laufen der Länge nach: So kommen die Quadrate um ein Viertel gedreht vom Streifen.
way-pieced = { $name }, dazu Hälften aus dem Rest
way-pieced-text = Was die Quadrate übrig lassen, wird zu Hälften von { $half } geschnitten. Zwei davon im gleichen Fadenlauf werden um { $lap } überlappt und zu einem Quadrat genäht, bevor es gebraucht wird: mehr Überlappungen zu nähen und zwei Lagen in seiner Mitte.
way-take = So schneiden: { $name }
spare-label = E
cut-chalk = Mit Kreide darauf: { $places }{ $spare ->
    [0] .
    [one] , und E auf das Ersatzquadrat.
   *[other] , und E auf die { $spare } Ersatzquadrate.
}
cut-chalk-halves = Schreib mit Kreide auf die Hälften, paarweise: { $places }.
cut-chalk-spare = { $spare ->
    [one] Es ist Ersatz: Schreib mit Kreide E darauf.
   *[other] Sie sind Ersatz: Schreib mit Kreide E darauf.
}
cut-line-done = { $title }: geschnitten
cut-left = Heb den Rest auf: ein Stück von etwa { $size } und die kleineren Reste.
cut-all-came = { $n ->
    [one] { $n } von { $n } Quadrat gut
   *[other] Alle { $n } Quadrate gut
}{ $parts }{ $strips ->
    [0] { "" }
    [one] , dazu der Streifen
   *[other] , dazu { $strips } Streifen
}
cut-none-came = { $strips ->
    [0] Daraus wird nichts geschnitten
    [one] Der Einfassstreifen ist gut
   *[other] Alle { $strips } Einfassstreifen gut
}
cut-next = { $name } schneiden: { $part }
cut-denims = Noch zuzuschneiden: { $list }.
cut-from = Zuschneiden aus: { $heaps }.
cut-of-denim = { $n } aus { $denim }
cut-run = { $nth ->
    [first] Davon
   *[next] Dann
}, { $left } von der linken unteren Ecke an: { $count ->
    [one] ein Quadrat.
   *[other] { $count } Quadrate.
}
cut-run-edge = { $nth ->
    [first] Davon
   *[next] Dann
}, von der linken unteren Ecke an: { $count ->
    [one] ein Quadrat.
   *[other] { $count } Quadrate.
}
cut-run-strip = { $nth ->
    [first] Davon
   *[next] Dann
}, ab { $left } rechts vom Einfassstreifen: { $count ->
    [one] ein Quadrat.
   *[other] { $count } Quadrate.
}
cut-run-strip-edge = { $nth ->
    [first] Davon
   *[next] Dann
}, gleich rechts vom Einfassstreifen: { $count ->
    [one] ein Quadrat.
   *[other] { $count } Quadrate.
}
cut-stretch = Er dehnt sich: Bleib im Fadenlauf und halte die Überlappungen mit Kleber statt Stecknadeln.
cut-unwashed = Noch nicht gewaschen: Wasch und bügle ihn, bevor du schneidest.
cut-nothing = Neben den Stellen zum Aussparen passt kein ganzes Quadrat.
cut-gain = { $n ->
    [one] Gut gelegt geben die Streifen ein Quadrat mehr.
   *[other] Gut gelegt geben die Streifen { $n } Quadrate mehr.
}
cut-free = { $n ->
    [one] Müssten die Streifen nicht quer liegen, könnte es ein Quadrat mehr geben; das dauert lange und geht leicht schief.
   *[other] Müssten die Streifen nicht quer liegen, könnte es { $n } Quadrate mehr geben; das dauert lange und geht leicht schief.
}
cut-most = Wie man es auch schneidet, mehr ganze Quadrate gibt es nicht.
cut-bound = Wie man es auch schneidet, es gibt höchstens { $most } ganze Quadrate.
cut-pieced = { $n ->
    [one] Ein Quadrat wird aus zwei Hälften vom Rest gestückelt.
   *[other] { $n } Quadrate werden gestückelt, je aus zwei Hälften vom Rest.
}
picture-piece = { $name }, { $n ->
    [one] ein Quadrat
   *[other] { $n } Quadrate
}{ $parts } in { $strips ->
    [one] einem Streifen
   *[other] { $strips } Streifen
}, Stellen zum Aussparen schraffiert

## Was bereitliegen soll

item-denim = Jeansstoff
item-denim-squares = { $n ->
    [one] Ein Quadrat zu { $side }
   *[other] { $n } Quadrate zu { $side }
}{ $begun ->
    [0] .
   *[other] ; { $open } noch zuzuschneiden.
}
item-denim-pieced = { $n ->
    [one] Eins davon wird aus zwei Hälften gestückelt, um { $lap } überlappt.
   *[other] { $n } davon werden aus zwei Hälften gestückelt, um { $lap } überlappt.
}
item-denim-spares = { $n ->
    [one] Dazu ein Ersatzquadrat.
   *[other] Dazu { $n } Ersatzquadrate.
}
item-denim-unpiled = { $n ->
    [one] Ein Quadrat fehlt noch. Auf dem Stapel liegt noch kein Jeansstoff.
   *[other] { $n } Quadrate fehlen noch. Auf dem Stapel liegt noch kein Jeansstoff.
}
item-denim-of = { $denim }: { $n ->
    [one] ein Quadrat
   *[other] { $n } Quadrate
}{ $begun ->
    [0] { "" }
   *[other] , { $open } noch zuzuschneiden
}{ $piled ->
    [0] .
   *[other] , { $gives } gibt der Stapel noch.
}
item-denim-of-strips = { $squares } { $n ->
    [one] Auch ein Einfassstreifen kommt daraus.
   *[other] Auch { $n } Einfassstreifen kommen daraus.
}
item-denim-named = Jeansstoff: { $denim }
item-fabric-patches = { $n ->
    [one] Ein Flicken von { $side }.
   *[other] { $n } Flicken von { $side }.
}
item-fabric-squares = { $n ->
    [one] Ein Quadrat zu { $side }.
   *[other] { $n } Quadrate zu { $side }.
}
item-enough = { $n } vorhanden: genug.
item-enough-of-it = Das reicht.
item-enough-in-all = Mit den vorhandenen zusammen { $n }: genug.
item-fabric-piled = { $n ->
    [one] Ein Quadrat gibt der Stapel noch.
   *[other] { $n } Quadrate gibt der Stapel noch.
}
item-from-spares = { $n ->
    [one] Eins davon kommt aus dem Ersatz.
   *[other] { $n } davon kommen aus dem Ersatz.
}
item-short = { $n ->
    [one] Eins fehlt.
   *[other] { $n } fehlen.
}
item-fat-quarters = { $n ->
    [one] Wenn du Fat Quarters kaufst: eines, es gibt { $each }.
   *[other] Wenn du Fat Quarters kaufst: { $n }, jedes gibt { $each }.
}
item-binding = Einfassstreifen
item-binding-strips = { $n ->
    [one] Ein Streifen, { $width } breit, { $longest } lang.
   *[other] { $n } Streifen, { $width } breit, { $longest } lang.
}
item-binding-length = { $n ->
    [0] Zusammen { $length }, keine Ansätze.
    [one] Zusammen { $length }, ein Ansatz.
   *[other] Zusammen { $length }, { $n } Ansätze.
}
item-thread = Garn
item-thread-needles = { $needles ->
    [one] { $each } für die Nadel.
   *[other] { $each } für jede Nadel.
}
item-thread-in-all = { $n ->
    [one] Eine Garnrolle zu { $size } reicht, auch für die Unterfadenspulen. Das ist eine Schätzung.
   *[other] Leg { $n } Garnrollen zu { $size } bereit; die Unterfadenspulen wickelst du vom selben Garn. Das ist eine Schätzung.
}
item-thread-twin = Eine Zwillingsnadel braucht zwei Garnrollen zugleich auf der Maschine.
item-thread-rows = Zwei Reihen mit einer Nadel brauchen nur eine Garnrolle auf der Maschine, aber doppelt so viel Garn wie eine Reihe.
item-thread-rule = Die Regel der Garnhersteller, 2½-mal jede Reihe, sagt zusammen { $length }; bei dicken Überlappungen ist das zu wenig.
item-bobbins = Unterfadenspulen
item-bobbins-length = { $length }: { $n ->
    [one] eine Unterfadenspule zu { $size }
   *[other] { $n } Unterfadenspulen zu { $size }
}.
item-needles = Nadeln
item-needles-besides = Für die Einfassung zusätzlich eine einzelne Jeansnadel: Mit einer Zwillingsnadel lässt sich keine Ecke nähen.
item-needles-spare = Eine oder zwei in Reserve; an dicken Kreuzungen brechen sie.
item-glue = Auswaschbarer Kleber
item-glue-dots = Etwa { $dots } Punkte, { $n ->
    [one] eine Flasche zu { $size }
   *[other] { $n } Flaschen zu { $size }
} (unsere Schätzung).
bottle-inch = 4 fl oz
bottle-metric = 118 ml
item-marker = Ein löschbarer Markierstift
item-marker-test = Probier ihn an einem Rest und bügle darüber: Manche Striche brennt Hitze ein, andere kommen bei Kälte wieder.
item-cutter = Rollschneider, Matte und Lineal
item-cutter-what = Am besten ist ein Lineal, das mindestens { $side } breit ist.
item-cutter-square = Zum Begradigen ein quadratisches Lineal von { $side } oder mehr.
item-press = Bügeleisen, Bügeltuch und ein ebener Platz zum Abkühlen
item-press-what = Das Tuch hält Kleber vom Bügeleisen fern. Gebügeltes liegt flach, bis es abgekühlt ist.
item-clips = Stoffklammern
item-clips-what = Sie halten die Einfassung an der Kante, bis sie gebügelt wird; ein Dutzend reicht.
item-clips-pins = Stecknadeln und Stoffklammern
item-clips-pins-what = Stecknadeln halten die Kanten jeder Naht, Klammern die Einfassung; ein Dutzend reicht.
item-ripper = Nahttrenner und Fadenschere
item-ripper-what = Um eine Naht aufzutrennen und nach jeder Wäsche die langen Fäden abzuschneiden.
item-ripper-snip = Um eine Naht aufzutrennen, die Nahtzugaben einzuschneiden und nach jeder Wäsche die langen Fäden abzuschneiden.
item-care = Augenschutz und ein Wäschesack
item-care-what = An dicken Kreuzungen kann eine Nadel brechen; die erste Wäsche gibt Flusen ab.
figure-weight = Gewicht der fertigen Decke
figure-denim-weight = Jeansstoff
figure-time = Noch zu arbeiten
kilograms = { $n } kg
grams = { $n } g
ounces-weight = { $n } oz
pounds = { $n } lb
gsm = { $n } g/m²
ounces = { $n } oz/yd²
metres = { $n } m
yards = { $n } yd
washer-roomy = Sie hat in einer Haushaltswaschmaschine ({ $size }) genug Platz, um sich zu bewegen.
washer-tight = Sie füllt eine Haushaltswaschmaschine ({ $size }): Wasch sie allein.
washer-heavy = Sie ist zu schwer für eine Haushaltswaschmaschine ({ $size }): Nimm eine größere, etwa im Waschsalon.
gather-estimates = Gewicht und Garn sind mit üblichem Stoff gerechnet, wenn der Stapel nichts anderes sagt.

## Nähproben

scrap-plan = Der Plan
scrap-typed = Diese Probe
scrap-right = Genau richtig
scrap-little-fringe = Zu wenig Fransen
scrap-bulky = Zu dick
scrap-puckers = Kräuselt sich oder lässt Stiche aus
scrap-other = Etwas anderes
scrap-title = { $joining ->
    [lapped] Überlappung { $lap }, { $stitch }
   *[other] Nahtzugabe { $lap }, { $stitch }
}
scrap-fringe = Fransen je Kante { $fringe }
scrap-use = In den Plan übernehmen
scrap-keep-plate = Öffnung der Stichplatte sichern
stitch-straight = eine gerade Reihe
stitch-twin = Zwillingsnadel { $width }
stitch-two-rows = zwei Reihen, { $width } auseinander
stitch-zigzag = Zickzack { $width }
figure-stitch = Stich
figure-thick-lap = Dickste Verbindung
figure-thick-crossing = Dickste Kreuzung
figure-widest = Breitester Stich
thick = etwa { $n } mm, { $layers } Lagen
strikes = keiner: Die Nadel trifft die Stichplatte

## Beide Seiten aufteilen

share-none = Keine
share-quarter = Ein Viertel
share-third = Ein Drittel
share-half = Die Hälfte
wishes-stay = { $units ->
    [0] { $glued ->
        [0] { $pinned ->
            [0] Was verbunden ist, bleibt, wie es ist.
           *[other] Was verbunden ist oder seinen Platz behält, bleibt, wie es ist.
        }
        [one] Ein Quadrat mit aufgeklebtem Stoff behält ihn.
       *[other] { $glued } Quadrate mit aufgeklebtem Stoff behalten ihn.
    }
    [one] Ein verbundenes Stück wird nicht aufgetrennt; aufgeklebter Stoff bleibt auf seinem Quadrat.
   *[other] { $units } verbundene Stücke werden nicht aufgetrennt; aufgeklebter Stoff bleibt auf seinem Quadrat.
}
wishes-short = { $have ->
    [0] Kein Stoffquadrat ist da, { $wanted } gewünscht.
    [one] Ein Stoffquadrat ist da, { $wanted } gewünscht. Es wird gelegt.
   *[other] { $have } Stoffquadrate sind da, { $wanted } gewünscht. So viele, wie da sind, werden gelegt.
}
wishes-no-prints = In der Liste ist noch kein Stoff.
wishes-crowded = { $face ->
    [front] Vorn
   *[back] Hinten
} lassen sich höchstens { $most } Quadrate so belegen, dass sich gleiche Stoffe { $apart ->
    [edges] an keiner Kante
   *[corners] nirgends, auch nicht an den Ecken,
} berühren. Gewünscht sind { $wanted }: Einige werden sich berühren.
wishes-on-sewn = Anordnungen lassen Eingenähtes, wie es ist. Ist eine Seite zu schlicht, wähl Quadrate auf „Seiten“: Auch dort kann Stoff aufgesetzt und rundherum festgenäht werden.
wishes-free = Vorn { $front_free ->
    [0] ist kein Quadrat mehr frei
    [one] ist noch ein Quadrat frei
   *[other] sind noch { $front_free } Quadrate frei
}: möglich sind { $front_least } bis { $front_most }. Hinten { $back_free ->
    [0] ist kein Quadrat mehr frei
    [one] ist noch ein Quadrat frei
   *[other] sind noch { $back_free } Quadrate frei
}: möglich sind { $back_least } bis { $back_most }.
wish-covered = Mit Stoff
wish-covered-value = vorn { $front }, hinten { $back }
wish-apart = Gleiche Stoffe nebeneinander
wish-apart-none = Keine gleichen Stoffe nebeneinander
wish-even-front = Vorn verteilt
wish-even-back = Hinten verteilt
wish-even-value = { $how ->
    [even] gleichmäßig
    [loose] locker
   *[clumps] gehäuft
}
wish-even-edges = { $value }; nur an den Kanten getrennt können sie gleichmäßiger liegen
wish-thick = Dickste Kreuzung
wish-thick-value = { $often ->
    [one] { $n } Lagen, einmal
   *[other] { $n } Lagen, { $often }-mal
}
wish-thick-met = Keine Kreuzung dicker als gewünscht
wish-thick-over = { $value }; { $n ->
    [one] eine Kreuzung ist dicker als { $wished } Lagen
   *[other] { $n } Kreuzungen sind dicker als { $wished } Lagen
}
wish-grain = Gegen den gewünschten Fadenlauf
wish-grain-value = { $n ->
    [0] keins
   *[other] { $n }
}
wish-mirror = Nicht gespiegelt
wish-shade-rows = Nicht nach Farbtönen geordnet
wish-light-edges = Nicht nach Farbtönen geordnet
wish-pattern-value = { $n ->
    [0] keins
    [one] ein Quadrat
   *[other] { $n } Quadrate
}
wish-shades-one-denim = nicht zu erfüllen: Alle Quadrate sind aus demselben Jeansstoff. Lass die Jeansstoffe mit anordnen, oder gib zuerst einigen Quadraten einen anderen.
wish-shades-not-yet = bisher sind alle Quadrate aus demselben Jeansstoff.
wish-shades-no-other = nicht zu erfüllen: Alle Quadrate sind aus demselben Jeansstoff, und der Stapel gibt für die noch zu schneidenden keinen anderen.
wish-shades-alike = nicht zu erfüllen: Die Jeansstoffe sind fast gleich hell. Berichtige ihre Farben, oder nimm einen helleren oder dunkleren dazu.
wish-shades-no-room = nicht zu erfüllen: Die Decke hat dafür zu wenige Reihen.
wishes-no-pile = Noch liegt keine Jeans auf dem Stapel: Wo die Wünsche etwas von jedem Jeansstoff verlangen, werden die Quadrate gleichmäßig verteilt.
wishes-pile = Für die noch zuzuschneidenden Quadrate gibt es, Ersatz eingerechnet, { $list }.
wishes-pile-of = { $n } × { $denim }
wishes-by-hand = { $n ->
    [one] Für ein noch zu schneidendes Quadrat hast du den Jeansstoff selbst gewählt.
   *[other] Für { $n } noch zu schneidende Quadrate hast du den Jeansstoff selbst gewählt.
}
wishes-pile-unnamed = { $n } × noch unbenannten Jeansstoff
wish-denims = Gemischte Jeansstoffe
wish-denims-one = es gibt nur einen Jeansstoff
wish-denims-apart = Gleiche Jeansstoffe nebeneinander
wish-denims-apart-none = Keine gleichen Jeansstoffe nebeneinander
wish-denims-bands = Jeder Jeansstoff beisammen
wish-denims-parts = { $denims } Jeansstoffe in { $parts } Gruppen
wish-pile = Vom Stapel
wish-pile-enough = { $left ->
    [0] nichts bleibt übrig
    [one] genug, ein Quadrat bleibt übrig
   *[other] genug, { $left } Quadrate bleiben übrig
}
wish-pile-short = { $n ->
    [one] ein Quadrat mehr, als der Stapel gibt
   *[other] { $n } Quadrate mehr, als der Stapel gibt
}
wish-pile-wasted = dem Stapel fehlen { $list }, und { $left } von anderem Jeansstoff blieben übrig
layout-denims = { $n ->
    [one] Ein Quadrat wird aus einem anderen Jeansstoff geschnitten.
   *[other] { $n } Quadrate werden aus einem anderen Jeansstoff geschnitten.
}
faces-lost-no-place = { $n ->
    [one] Ein Stoffquadrat hat in diesem Raster keinen Platz
   *[other] { $n } Stoffquadrate haben in diesem Raster keinen Platz
}: { $list }.
faces-lost-no-fabric = { $n ->
    [one] Ein Stoffquadrat wird nicht übernommen, weil es von seinem Stoff keins gibt
   *[other] { $n } Stoffquadrate werden nicht übernommen, weil ihr Stoff nicht reicht
}: { $list }.
faces-lost-one = { $print } auf { $square } ({ $face ->
    [front] vorn
   *[back] hinten
})
faces-lost-count = { $n } × { $print }
faces-lost-glued = { $n ->
    [one] Eins davon ist aufgeklebt und geht mit seinem Quadrat.
   *[other] { $n } davon sind aufgeklebt und gehen mit ihren Quadraten.
}
faces-lost-by-hand = { $n ->
    [one] Ein Quadrat, das seinen Platz behalten soll oder dessen Jeansstoff du gewählt hast, hat in diesem Raster keinen Platz.
   *[other] { $n } Quadrate, die ihren Platz behalten sollen oder deren Jeansstoff du gewählt hast, haben in diesem Raster keinen Platz.
}
layouts-running = Sucht bessere: { $n } von { $all }
layouts-done = { $n ->
    [one] Eine Anordnung gefunden
   *[other] { $n } Anordnungen gefunden
}
layout-met = { $met } von { $all } Wünschen erfüllt
layout-spoken = Anordnung { $letter }: { $met }. { $changes }
layout-changes = { $n ->
    [0] Kein Quadrat wechselt den Stoff.
    [one] Ein Quadrat wechselt den Stoff.
   *[other] { $n } Quadrate wechseln den Stoff.
} { $sewn ->
    [0] { $turned ->
        [0] { $joined ->
            [0] { "" }
           *[other] Genähte Stücke bleiben, wo sie sind.
        }
        [one] Ein verbundenes Stück wird gedreht.
       *[other] { $turned } verbundene Stücke werden gedreht.
    }
    [one] Ein verbundenes Stück bekommt einen anderen Platz.
   *[other] { $sewn } verbundene Stücke bekommen andere Plätze.
}
stitching-front = Nähseite: Näh mit dieser Seite oben.
stitching-back = Nicht die Nähseite: Hier liegt der Unterfaden.
floor-title = { $of ->
    [pairs] Paarreihe { $row }: Quadrate { $first } bis { $last }
   *[fours] Viererreihe { $row }: Quadrate { $first } bis { $last }
}
floor-text = Leg diese Quadrate mit der Vorderseite nach oben hin, von links nach rechts. Vergleich jedes mit dem Bild, bevor du weitermachst.
floor-joined = mit seiner Reihe verbunden
floor-cell = { $piece }. Oben: { $up }. Darunter: { $under }. Fadenlauf: { $grain ->
    [across] quer
   *[other] längs
}
floor-wrong-side = { $denim }, linke Stoffseite
floor-its-wrong-side = die linke Stoffseite
floor-its-right-side = die rechte Stoffseite
floor-cell-sewn = { $cell }, { $sewn }
covering-front = { $print } vorn
covering-back = { $print } hinten
covering-count = { $done ->
    [0] { $n ->
        [one] ein Quadrat
       *[other] { $n } Quadrate
    }
   *[other] { $n ->
        [one] ein Quadrat, geklebt
       *[other] { $n } Quadrate, davon { $done } geklebt
    }
}
covering-patch = { $square } (Flicken { $side })
covering-square = vorn { $front }, hinten { $back }
covering-piece = Quadrate { $squares }
covering-piece-sewn = Quadrate { $squares }; genäht
labelling-1 = Schreib Reihe und Platz jedes Quadrats, etwa 3·5, auf einen Zettel und steck ihn oben links auf die Vorderseite; oder schreib es dort mit Kreide, wo kein Stoff darüberkommt.
labelling-2 = Der Zettel zeigt, welche Kante oben und welche Seite vorn ist; so lässt sich ein Quadrat aufheben und zurücklegen.
labelling-3 = Nimm Kreide oder einen löschbaren Markierstift, zuerst an einem Rest probiert. Zieh die Stecknadeln heraus, bevor Bügeleisen und Nadel in die Nähe kommen.

## Zeichnungen und Tabellen zum Mitnehmen

draw-size = { $grid }, Quadrate zu { $side }; fertig { $size }
draw-stitching = Das ist die Nähseite: Sie liegt an der Maschine oben.
draw-turned = Umgeblättert wie eine Seite: Links und rechts sind vertauscht, die Spalten zählen also von rechts. Der Unterfaden liegt auf dieser Seite.
draw-count = { $n ->
    [one] { $n } Quadrat
   *[other] { $n } Quadrate
}
draw-count-wrong = { $n ->
    [one] { $n } Quadrat, linke Stoffseite außen
   *[other] { $n } Quadrate, linke Stoffseite außen
}
sign-stays = Geklebt oder verbunden, bleibt also, wie es ist
sign-clash = Gleiche Stoffe berühren sich
sign-pin = Behält seinen Platz
sign-wrong = Linke Seite des Jeansstoffs
sign-wrong-letter = l
sign-grain = Fadenlauf quer
sign-unit = Schon verbunden, geht als ein Stück
sign-pieced = Aus zwei Hälften gestückelt
sign-lap = Überlappung genäht, mit Fransen auf beiden Seiten
draw-key-sewn = Genäht
draw-key-open = Noch zu nähen
draw-key-pieced = Aus zwei Hälften gestückelt
draw-key-block = Kante eines Vierers
draw-key-fringe = Offene Kante, bis sie eingefasst ist
draw-key-binding = Einfassung
draw-key-cut = Schnitte quer, vom Saum aus gemessen; die Nummern der Streifen stehen in Kreisen.
draw-key-avoid = Zu meiden: { $kinds }
draw-key-half = Halbes Quadrat; zwei davon werden überlappt und zu einem genäht.
draw-key-strip = Streifen für die Einfassung
file-front = vorn
file-back = hinten
file-squares = quadrate
file-covering = stoffe
file-joins = verbindungen
file-cutting = zuschnitt
file-supplies = bedarf
file-record = verlauf
table-yes = ja
table-no = nein
column-label = Quadrat
column-row = Reihe
column-column = Spalte
column-column-back = Spalte von hinten gesehen
column-denim = Jeansstoff
column-wrong-up = Linke Stoffseite nach vorn
column-front = Stoff vorn
column-back = Stoff hinten
column-stage = Stand
column-pieced = Aus zwei Hälften
column-letters = Buchstaben
column-name = Name
column-on-front = Vorn
column-on-back = Hinten
column-total = Zusammen
column-piece = Stück
column-kind = Art
column-first = Erstes Teil
column-second = Zweites Teil
column-lap-in = Überlappung (Zoll)
column-lap-mm = Überlappung (mm)
column-sewn = Genäht
column-heap = Auf dem Stapel
column-for = Für
column-width-in = Größte Breite (Zoll)
column-width-mm = Größte Breite (mm)
column-height-in = Länge (Zoll)
column-height-mm = Länge (mm)
column-strips = Streifen
column-of-halves = Davon aus zwei Hälften
column-expected = Quadrate erwartet
column-counted = Quadrate gezählt
column-item = Posten
column-count = Anzahl
column-unit = Wovon
column-there = Vorhanden oder vom Stapel
column-short = Fehlt
column-length-in = Länge (Zoll)
column-length-mm = Länge (mm)
column-words = In Worten
column-have = Vorhanden
column-time = Wann (UTC)
column-entry = Eintrag
column-done = Was getan wurde
column-stands = Gilt
unit-squares = Quadrate
unit-strips = Streifen
unit-spools = Garnrollen
unit-bobbins = Unterfadenspulen
unit-bottles = Flaschen

## Wie Dinge aneinandergereiht und Längen getippt werden

list-short = { $before }, { $next }
list-long = { $before }; { $next }
list-and = { $before } und { $next }
sentences = { $before } { $next }
told = { $what }: { $how }
times = { $n } × { $what }
example-inch = 9 1/2 Zoll
example-metric = 241 mm
# Wörter, die außer dem Zeichen für eine Einheit gelten, mit Kommas dazwischen.
unit-typed-in = Zoll
unit-typed-ft = Fuß, Fuss
unit-typed-yd = Yard, Yards
unit-typed-mm = Millimeter
unit-typed-cm = Zentimeter
unit-typed-m = Meter

## Die Probedecke, und womit eine neue Decke beginnt

demo-name = Decke für den Fensterplatz
demo-fabric-1 = Hagebutte
demo-fabric-2 = Gerste
demo-fabric-3 = Moos
demo-fabric-4 = Hafen
demo-denim-1 = Dunkle Jeans
demo-denim-2 = Helle Jeans
demo-garment-1 = Dunkle Arbeitsjeans
demo-garment-2 = Helle Gartenjeans
demo-note-leg = Linkes Bein der hellen ist am Knie dünn.
demo-note-four = Der hier hat sich am Ende der Naht gedehnt.

did-pin-place = Behalten ihren Platz: { $pieces }

## Weitergeben

hand-throw = Die Decke selbst
hand-throw-what = { $n ->
    [one] Ihr Plan und der eine festgehaltene Schritt, in einer Datei.
   *[other] Ihr Plan, alles bisher Getane und alle { $n } festgehaltenen Schritte, in einer Datei.
} Öffne sie mit Lapwork auf einem anderen Gerät, oder heb sie als Kopie auf.
hand-throw-save = Decke sichern
hand-pictures = Bilder
hand-pictures-what = Beide Seiten und jedes Stück Stoff mit seinem Zuschnitt, als { $n } Zeichnungen (SVG), die jeder Browser zeigt und druckt.
hand-pictures-save = Alle Bilder sichern
hand-tables = Tabellen
hand-tables-what = Quadrate, Verbindungen, Zuschnitt, Bedarf und Verlauf, als { $n } Tabellen (CSV), die jede Tabellenkalkulation öffnet.
hand-tables-save = Alle Tabellen sichern
hand-tables-harmless = { $n ->
    [one] Ein Name oder eine Notiz beginnt wie eine Formel: In den Tabellen steht ein Apostroph vor dem Zeichen, damit keine Tabellenkalkulation sie ausrechnet.
   *[other] { $n } Namen und Notizen beginnen wie eine Formel: In den Tabellen steht ein Apostroph vor dem Zeichen, damit keine Tabellenkalkulation sie ausrechnet.
}
handed = Gesichert: { $file }
handed-many = { $n ->
    [one] Gesichert: eine Datei in { $folder }
   *[other] Gesichert: { $n } Dateien in { $folder }
}
error-file-absurd = Zeile { $line } dieser Datei sagt etwas Unmögliches, etwa viel mehr Quadrate, als eine Decke hat.
error-file-too-much = In dieser Datei steht weit mehr Arbeit, als eine Decke macht: Bis Zeile { $line } bräuchte Lapwork Minuten, um sie zu lesen.
error-file-too-much-next = Nichts davon wurde übernommen. Bitte den, von dem sie kommt, die Decke noch einmal zu sichern.
error-file-absurd-next = Nichts davon wurde übernommen. Bitte den, von dem sie kommt, die Decke noch einmal zu sichern.
error-file-beyond = Zeile { $line } dieser Datei nennt { $figure } für „{ $field }“, weit jenseits von allem, was eine Decke hat.
error-file-beyond-next = Nichts davon wurde übernommen, und sie bleibt unberührt. Bitte den, von dem sie kommt, die Decke noch einmal zu sichern, oder öffne eine aufgehobene Kopie.
error-file-unknown = Zeile { $line } dieser Datei enthält etwas, das dieses Lapwork nicht kennt.
error-file-unknown-next = Nichts davon wurde übernommen. Öffne sie mit dem Lapwork, das sie geschrieben hat.
error-merge-strangers = Das sind nicht zwei Kopien einer Decke.
error-merge-strangers-next = Behalte beide als eigene Decken.
error-merge-undecided = Noch ist nicht alles entschieden, worin sich die Kopien unterscheiden.
error-merge-undecided-next = Wähle überall eine Seite, wo sich die beiden unterscheiden, dann führ sie zusammen.
error-merge-misfit = Die beiden Kopien lassen sich nicht zusammenführen: Ein Schritt der einen würde nicht mehr folgen.
error-merge-misfit-next = Beide sind unberührt. Behalte beide, und mach mit einer weiter.
error-other-brought = Inzwischen wurde eine andere Datei geöffnet; deshalb ist nichts geschehen.
error-other-brought-next = Sieh dir zuerst jene an, oder öffne diese noch einmal.
error-nothing-brought = Es wurde keine Datei geöffnet.
error-nothing-brought-next = Wähle zuerst die Datei einer Decke.

## Eine Decke, die gebracht wird

bring-found = Ein anderes Programm hat die Datei dieser Decke geändert. Nichts ist verloren; mach deinen letzten Schritt danach noch einmal.
bring-found-details = Während deine Decke offen war, hat ein anderes Programm diese Datei an die Stelle der ihren gelegt. Deine Decke liegt wieder an ihrer Stelle; beide Dateien liegen als { $here } und { $brought } daneben.
bring-new = Eine Decke für dein Regal
bring-new-what = Hier ist noch keine Kopie davon.
bring-add = Ins Regal legen
bring-same = Du hast sie schon
bring-same-what = Die Datei und die Decke hier sind Schritt für Schritt gleich. Es ist nichts zu tun.
bring-torn = { $bytes ->
    [one] Das letzte Byte der Datei ist nicht zu lesen und bleibt weg. Wahrscheinlich wurde die Datei unterwegs abgeschnitten. Was folgt, gilt für den Rest.
   *[other] Die letzten { $bytes } Bytes der Datei sind nicht zu lesen und bleiben weg. Wahrscheinlich wurde die Datei unterwegs abgeschnitten. Was folgt, gilt für den Rest.
}
bring-fine = Lassen, wie es ist
bring-here-more = Du hast sie schon, und mehr
bring-here-more-what = { $n ->
    [one] Die Decke hier hat alles aus der Datei und einen Schritt mehr.
   *[other] Die Decke hier hat alles aus der Datei und { $n } Schritte mehr.
}
bring-more = Eine neuere Kopie einer Decke hier
bring-more-what = { $n ->
    [one] Die Datei hat alles, was die Decke hier hat, und einen Schritt mehr.
   *[other] Die Datei hat alles, was die Decke hier hat, und { $n } Schritte mehr.
}
bring-take-more = { $n ->
    [one] Die Kopie mit mehr nehmen (ein Schritt mehr)
   *[other] Die Kopie mit mehr nehmen ({ $n } Schritte mehr)
}
bring-apart = Zwei Kopien mit verschiedenen Schritten
bring-apart-what = Nur hier: { $here ->
    [one] ein Schritt
   *[other] { $here } Schritte
}. Nur in der Datei: { $brought ->
    [one] ein Schritt
   *[other] { $brought } Schritte
}. Was davor war, ist in beiden gleich.
bring-conflicts = { $n ->
    [0] Sie widersprechen sich nicht: Von beiden kann alles bleiben.
    [one] An einer Stelle widersprechen sie sich: Wähle, was dort bleibt. Die Schritte, die auf der anderen Seite stehen, fallen weg; alles, was nicht aufgeführt ist, bleibt.
   *[other] An { $n } Stellen widersprechen sie sich: Wähle, was jeweils bleibt. Die Schritte, die auf der anderen Seite stehen, fallen weg; alles, was nicht aufgeführt ist, bleibt.
}
bring-only = Nur auf dieser Seite, und verloren, wenn du die andere wählst: { $list }
bring-alike = Beide lesen sich gleich; sie unterscheiden sich in Einzelheiten, die hier nicht stehen.
bring-more-squares = { $n ->
    [one] und noch ein Quadrat
   *[other] und noch { $n } Quadrate
}
bring-stock = { $name } ({ $n } vorhanden)
bring-unmergeable = Sie lassen sich nicht zusammenführen.
bring-merge = Zusammenführen
bring-both = Beide behalten
bring-keep-here = Behalten, was hier ist
bring-copy-here = Auf diesem Gerät
bring-copy-brought = In der Datei
bring-steps = { $n ->
    [one] ein Eintrag
   *[other] { $n } Einträge
}
bring-copy-name = { $name } (Kopie)
copy-none = „{ $name }“ liegt nur in diesem Browser. Sichere eine Kopie an einem anderen Ort, falls der Browser seinen Speicher leert.
copy-old = Vieles an „{ $name }“ liegt nur in diesem Browser. Sichere eine neue Kopie an einem anderen Ort, falls der Browser seinen Speicher leert.
kept-copies = { $n ->
    [one] 1 Kopie vom Zusammenführen liegt daneben ({ $size } kB).
   *[other] { $n } Kopien vom Zusammenführen liegen daneben ({ $size } kB).
}
taken-added = Im Regal: { $name }
taken-both = Beide liegen im Regal; die andere heißt { $name }
taken-brought = Die Kopie mit mehr Schritten liegt im Regal. Die Datei, wie sie hier war, liegt daneben als { $copy }
taken-here = Nichts wurde geändert.
taken-merged = Zusammengeführt. Beide Dateien von vorher liegen daneben als { $here } und { $brought }

## Auf Papier

sheet-both = { $first } ({ $second })
sheet-subtitle = { $squares }, { $grid }; fertig { $size }
sheet-day = Gedruckt am { $day }
sheet-system-inch = Zoll
sheet-system-metric = Metrisch
sheet-making = Arbeitsblatt
sheet-bench = Merkkarte
sheet-handout = Kursblatt
sheet-blank-name = Name
sheet-blank-begun = Begonnen am
sheet-blank-scraps = Überlappungen, die ich an einer Nähprobe versucht habe
sheet-blank-found = Wie es wurde
sheet-blank-squares = Quadrate, die ich zugeschnitten habe
sheet-blank-planned = Geplant
sheet-blank-cut = Geschnitten
sheet-blank-finished = Meine Decke, gemessen
sheet-blank-before = Vor der ersten Wäsche
sheet-blank-after = Nach dem Waschen
sheet-page = Seite
sheet-figures = Maße
sheet-supplies = Was du brauchst
sheet-totals = Gewicht, Stoff und Zeit
sheet-prints = Stoffe und ihre Buchstaben
sheet-denims = Jeansstoffe
sheet-no-print = Buchstaben im Rahmen nennen den Stoff. Ein Quadrat ohne Rahmen ist nur Jeansstoff.
sheet-pieced = ½: aus zwei Hälften gestückelt, überlappt und genäht.
sheet-wrong-side = Wo die linke Seite eines Jeansstoffs zu sehen ist, ist er blasser, und sein Köper läuft andersherum.
sheet-pile = Den Stapel zuschneiden
sheet-pile-past = Schon zugeschnitten
sheet-pile-other = Anderer Stoff
key-square-places = Ein Quadrat; schreib mit Kreide seinen Platz darauf.
key-square-numbered = Ein Quadrat mit seiner Nummer.
key-square-past = Ein Quadrat.
key-spare = E: ein Ersatzquadrat.
key-half = ½: ein halbes Quadrat; zwei werden zu einem überlappt.
key-binding = Ein Einfassstreifen.
key-avoid = Hier nicht schneiden.
key-rest = Der Rest.
key-cut = Gerade quer durchschneiden; daneben die Nummer des Streifens.
key-cut-past = Ein Schnitt; daneben die Nummer des Streifens.
key-done = Schon geschnitten.
key-now = Als Nächstes zu schneiden.
sheet-faces = Beide Seiten
sheet-work = Die Arbeit, Abschnitt für Abschnitt
sheet-squaring = Auf Maß schneiden
sheet-laps = Überlappungen, die vom Plan abweichen
sheet-scraps = Nähproben
sheet-notes = Notizen
sheet-lessons = Was du gelernt hast
sheet-learned = Gelernt
sheet-learned-here = An dieser Decke gelernt
sheet-corners = Die Einfassung an jeder Ecke
sheet-story = Die Geschichte
sheet-left-off = { $n ->
    [one] Ein Foto fehlt hier: Höchstens { $most } werden gedruckt.
   *[other] { $n } Fotos fehlen hier: Höchstens { $most } werden gedruckt.
}
sheet-record = Was sich unterwegs geändert hat
sheet-more-changes = { $n ->
    [one] eine weitere Änderung
   *[other] { $n } weitere Änderungen
}
sheet-width = Breite
sheet-height = Höhe
sheet-trimmed = Erledigt
sheet-part = Teil
sheet-ticked = Ein Kästchen mit Haken war beim Drucken erledigt. Die Zahlen über den Kästchen sind die Nummern der Schritte.
sheet-by-hand = Schreib jedes Maß hinein, bevor du schneidest.
sheet-caution = Vorsicht
sheet-cautions = Achtung
sheet-order = In dieser Reihenfolge
sheet-columns-steps = Schritt
sheet-cut-alike = Gleich schneiden
sheet-missing = Diese Zeichen hat die Schrift nicht, mit der gedruckt wurde; sie stehen als leere Kästchen:
sheet-mirrored = Gespiegelt: So sieht es aus, wenn die Decke wie eine Buchseite umgeblättert ist. Die Nummern der Spalten sind die der Vorderseite.
sheet-spares = Ersatzquadrate
sheet-spoilt = Unbrauchbare Quadrate
sheet-differs = nicht alle gleich
sheet-count = { $all ->
    [one] { $done ->
        [0] 1 zu tun
       *[other] erledigt
    }
   *[other] { $done ->
        [0] { $all } zu tun
       *[other] { $done } von { $all } erledigt
    }
}
sheet-of-piece = { $piece }: { $text }
sheet-line-pair = { $first } + { $second }
sheet-run = { $first } bis { $last }
sheet-in-order = { $pieces } in der Reihenfolge der Kästchen
sheet-value-at = { $value }: { $pieces }
sheet-leaning = { $n ->
    [one] { $pieces } ist schief; hinein passt { $size }.
   *[other] { $pieces } sind schief; hinein passt jeweils { $size }.
}
sheet-all-others = alle anderen
sheet-at-lap = { $value } bei { $lap } Überlappung
sheet-as-lapped = { $values }, wie in Schritt { $n }
sheet-mixed = Von { $prints } ist jedes Quadrat anders: Nimm eins, das den Nachbarn nicht gleicht.
sheet-laps-see = { $n ->
    [one] Eine Überlappung weicht hier ab; siehe „Überlappungen, die vom Plan abweichen“.
   *[other] { $n } Überlappungen weichen hier ab; siehe „Überlappungen, die vom Plan abweichen“.
}
sheet-lap-made = Mit { $lap } statt { $planned } begonnen{ $n ->
    [one] . { $pieces }.
   *[other] , { $n } insgesamt. { $pieces }.
}
sheet-trim-of = Schneiden auf, je { $kind }
sheet-scrap-first = Näh zuerst eine Probe mit dieser Nadel und diesem Garn.
sheet-as-step = Wie in Schritt { $n } unter „{ $stage }“.
sheet-stage-square = Quadrate
sheet-stage-pair = Paare
sheet-stage-four = Vierer
sheet-stage-larger = Größere Verbindungen
sheet-stage-whole = Die letzte Verbindung
sheet-stage-binding = Einfassung
sheet-stage-washing = Wäschen
sheet-column-cut = zuschneiden
sheet-column-lap-halves = Hälften überlappen
sheet-column-press-halves = bügeln
sheet-column-cool-halves = abkühlen
sheet-column-stitch-halves = Hälften nähen
sheet-column-cut-fabric = Stoff zuschneiden
sheet-column-cover-front = Stoff vorn
sheet-column-cover-back = Stoff hinten
sheet-column-press-cover = bügeln
sheet-column-cool-cover = abkühlen
sheet-column-stitch-patch = Flicken nähen
sheet-column-dot = überlappen, kleben
sheet-column-press-lap = bügeln
sheet-column-cool-lap = abkühlen
sheet-column-pin = stecken
sheet-column-stitch = nähen
sheet-column-press-seam = bügeln
sheet-column-press-block = flach bügeln
sheet-column-square-up = auf Maß schneiden
sheet-column-trim-edge = Kante bügeln und begradigen
sheet-column-cut-binding = Streifen schneiden
sheet-column-join-binding = verbinden
sheet-column-press-binding = falten, bügeln
sheet-column-glue-binding = um die Kante legen
sheet-column-stitch-binding = nähen
sheet-column-snip = einschneiden
sheet-column-wash = waschen
sheet-column-clip = Fäden abschneiden
sheet-then = , { "" }
sheet-order-line = { $what }: { $steps }
sheet-more-prints = { $n ->
    [one] und ein weiterer auf dem Arbeitsblatt
   *[other] und { $n } weitere auf dem Arbeitsblatt
}
sheet-caution-blade = Jedes Mal die Klinge sichern. Vom Körper weg schneiden.
sheet-caution-iron = Bügelsohle und Dampf sind heiß. Aufstellen beim Loslassen.
sheet-caution-blade-and-iron = Stell das Eisen weg, bevor du schneidest. Klingenschutz jedes Mal schließen.
sheet-caution-needle = Kein Metall im Weg. Handrad über dicken Kreuzungen; Augenschutz.
sheet-caution-lint = Flusensieb vor und nach jeder Ladung reinigen.
sheet-caution-children = Lange Fransen gehören nicht ins Babybett.
figure-between = Überlappung der Vierer

error-beyond = Eine Zahl in diesem Schritt liegt weit jenseits von allem, was eine Decke hat: { $figure } für „{ $field }“.
error-beyond-next = Tippe sie noch einmal in Zoll oder Millimetern.

## Geschichte, Fotos, und noch einmal machen

did-note-next = Für das nächste Mal: { $text }
did-picture = Foto in die Geschichte gelegt
did-picture-words = Foto in die Geschichte gelegt: { $words }
did-unpicture = Foto aus der Geschichte genommen
did-begin-after = Begonnen: { $name }, { $grid }, nach { $after }
error-caption = Die Worte unter einem Foto dürfen höchstens { $most } Zeichen haben.
error-caption-next = Schreib hier weniger; eine Notiz kann mehr sagen.
error-pictured-already = Dieses Foto ist schon in der Geschichte.
error-pictured-already-next = Wähle ein anderes, oder nimm jenes zuerst heraus.
error-photo = So ein Foto ist nicht in der Geschichte, oder sie hat schon { $most } Fotos.
error-photo-next = Sieh dir die Geschichte noch einmal an. Ist sie voll, nimm zuerst ein Foto heraus.
story-lang = de
story-about = { $grid }, Quadrate zu { $side }, fertig { $size }
story-made = { $list }.
story-turn = Unterwegs
story-note = Notiz
story-next = Für das nächste Mal
story-photo = Foto
story-mishap = Missgeschick
story-no-photo = Dieses Foto ist nicht mehr auf dem Gerät.
made-cut = { $pieces } zugeschnitten
made-cover-front = { $pieces } vorn beklebt
made-cover-back = { $pieces } hinten beklebt
made-stitch = { $pieces } genäht
made-square-up = { $pieces } auf Maß geschnitten
made-stitch-binding = Einfassung genäht
made-wash = { $n ->
    [one] einmal gewaschen
   *[other] { $n }-mal gewaschen
}
lessons-from = Gelernt von { $name }
lesson-scrap = An einer Nähprobe war eine Überlappung von { $lap } richtig.
lesson-drift = { $n } gemessene Vierer wurden im Mittel je Verbindung { $off }.
lesson-whole = Fertig maß sie { $size }; geplant war { $planned }.
lesson-wash = { $n ->
    [one] Eine Wäsche änderte sie um { $across } % in der Breite und { $down } % in der Höhe (ISO 5077).
   *[other] { $n } Wäschen änderten sie um { $across } % in der Breite und { $down } % in der Höhe (ISO 5077).
}
lesson-spoilt = { $n ->
    [one] Ein Quadrat wurde unbrauchbar: { $why }.
   *[other] { $n } Quadrate wurden unbrauchbar: { $why }.
}
lesson-more-front = { $n ->
    [one] Nach Beginn des Zuschnitts kam vorn bei einem Quadrat noch Stoff dazu.
   *[other] Nach Beginn des Zuschnitts kam vorn bei { $n } Quadraten noch Stoff dazu.
}
lesson-more-back = { $n ->
    [one] Nach Beginn des Zuschnitts kam hinten bei einem Quadrat noch Stoff dazu.
   *[other] Nach Beginn des Zuschnitts kam hinten bei { $n } Quadraten noch Stoff dazu.
}
lesson-paces = { $n ->
    [one] Dein Tempo bei einem Schritt ist bekannt; die restliche Zeit wird danach berechnet.
   *[other] Dein Tempo bei { $n } Schritten ist bekannt; die restliche Zeit wird danach berechnet.
}
lesson-pace = { $minutes ->
    [half] Du brauchtest je etwa eine halbe Minute.
    [one] Du brauchtest je etwa eine Minute.
   *[other] Du brauchtest je etwa { $minutes } Minuten.
}
drift-before = Bei { $name } wurden { $n } gemessene Vierer im Mittel je Verbindung { $off }. Miss hier fünf, um zu sehen, wie es bei dieser Decke geht.
again-name = { $name }, noch einmal
