# Was die Schale sagt: Ärger mit Dateien, und die Befehlszeile.
# Anrede: du, in der Befehlsform; Beschriftungen in der Grundform.

error-disk = { $kind ->
    [full] Der Datenträger ist voll; { $file } konnte nicht geschrieben werden.
    [forbidden] { $file } darf hier nicht gelesen oder geschrieben werden.
    [exists] { $file } gibt es schon und bleibt, wie es ist.
   *[other] { $file } konnte nicht gelesen oder geschrieben werden: { $why }.
}
error-disk-next = { $kind ->
    [full] Schaff Platz und versuch es noch einmal. Was vorher gesichert war, ist sicher.
    [forbidden] Erlaube Lapwork, in diesem Ordner zu lesen und zu schreiben, und versuch es noch einmal.
    [exists] Nimm einen anderen Namen oder verschieb das Vorhandene zuerst.
   *[other] Prüfe, ob der Datenträger da ist und funktioniert, und versuch es noch einmal. Was vorher gesichert war, ist sicher.
}
error-locked = Lapwork ist zweimal offen, und nur eines darf in seinen Ordner schreiben.
error-locked-next = Hier kannst du dich umsehen. Zum Weiterarbeiten schließ das andere und versuch es noch einmal.
error-torn-left = Der letzte Schritt ist erst halb geschrieben, und die Datei lässt sich gerade nicht reparieren.
error-torn-left-next = Hier kannst du dich umsehen. Um weiterzuarbeiten, schaff Platz oder schließ das andere Lapwork, und öffne die Decke noch einmal.
error-changed = Ein anderes Programm hat die Datei dieser Decke geändert.
error-changed-next = Nichts ist verloren. { $found ->
    [more] Entscheide, was aus den gefundenen Schritten wird, und tippe dann noch einmal.
   *[other] Tippe noch einmal.
}
error-changed-details = { $file } war nicht mehr so, wie Lapwork die Datei geschrieben hatte: Während die Decke offen war, hat ein anderes Programm sie geändert, eine andere an ihre Stelle gelegt oder sie weggenommen. Dein letzter Schritt wurde nicht gesichert. Alle Schritte, die vorher gesichert waren, sind sicher: Die Datei liegt mit jedem davon wieder an ihrer Stelle. { $found ->
    [nothing] Mach den letzten Schritt noch einmal. Dasselbe liegt auch als { $here } daneben.
    [less] Was dort lag, enthielt sonst nichts. Mach den letzten Schritt noch einmal. Beide Dateien liegen als { $here } und { $brought } daneben.
    [unsound] Was dort lag, war nicht als Decke zu lesen. Mach den letzten Schritt noch einmal. Beide Dateien liegen als { $here } und { $brought } daneben.
   *[more] Was dort lag, enthält auch andere Schritte: Entscheide, was aus ihnen wird, und mach dann den letzten Schritt noch einmal. Beide Dateien liegen als { $here } und { $brought } daneben.
}
error-changed-left = Ein anderes Programm hat die Datei dieser Decke geändert, und das lässt sich gerade nicht rückgängig machen. Dein letzter Schritt wurde nicht gesichert.
error-changed-left-next = Lass Lapwork offen: Es kennt noch jeden Schritt, der vorher gesichert war. Schaff Platz, prüfe, ob der Speicher funktioniert, und mach den Schritt dann noch einmal.
error-changed-left-details = { $file } ist nicht mehr so, wie Lapwork die Datei geschrieben hat: Während die Decke offen war, hat ein anderes Programm sie geändert, eine andere an ihre Stelle gelegt oder sie weggenommen. Dein letzter Schritt wurde nicht gesichert, und die Datei lässt sich gerade nicht wiederherstellen ({ $why }).
error-away = Der Ordner { $file }, in dem deine Decken liegen, ist nicht mehr da; gerade lässt sich nichts sichern.
error-away-next = Lass Lapwork offen: Es kennt noch jeden Schritt, der vorher gesichert war. Bring den Ordner oder den Datenträger, auf dem er liegt, an seine Stelle zurück, und mach den letzten Schritt dann noch einmal.
error-random = Dieses Gerät lieferte keine Zufallszahl; deshalb ließ sich keine Decke beginnen ({ $why }).
error-random-next = Versuch es noch einmal. Hilft das nicht, starte das Gerät neu; die Decken, die du hast, sind unberührt.
error-too-large = { $file } ist größer als 64 MB; mehr liest und schreibt Lapwork nicht.
error-too-large-next = Beginne eine neue Decke für das, was noch zu machen ist.
error-no-such-throw = Diese Decke liegt nicht mehr im Regal.
error-no-such-throw-next = Geh zurück zum Regal; vielleicht ist sie bei den gelöschten.
error-missing = Der Ordner der Decke ist da, aber nicht ihre Datei { $file }.
error-missing-next = Leg die Datei aus einer Kopie zurück oder lösche diese Decke.
error-bad-id = So heißt keine Decke.
error-bad-id-next = Geh zurück zum Regal und wähle dort eine.
error-settings = Die Einstellungen in { $file } waren nicht zu lesen; es gelten die üblichen.
error-settings-next = Wähle deine Einstellungen neu; deine Decken sind unberührt.
error-unreadable = Dieser Schritt ließ sich nicht festhalten und wurde deshalb nicht getan.
error-unreadable-next = Mach ohne ihn weiter; sonst ist nichts verloren. Der Fehler liegt bei Lapwork, nicht bei dir.

error-no-screen = Hier gibt es keinen Bildschirm für ein Fenster.
error-no-screen-next = Starte Lapwork an einem Bildschirm, oder sieh mit lapwork --help nach, was es ohne Fenster kann.
error-no-home = Hier gibt es keinen eigenen Ordner, um Decken aufzuheben.
error-no-home-next = Nenne einen Ordner in LAPWORK_DATA und starte Lapwork noch einmal.
error-no-window = Das Fenster lässt sich nicht öffnen: { $why }.
error-no-window-next = Prüfe, ob WebKitGTK 4.1 installiert ist, und starte Lapwork noch einmal.

error-no-file = Hier ist keine Datei einer Decke.
error-no-file-next = Nenne eine throw.jsonl oder den Ordner, in dem sie liegt.
error-arguments = Nicht verstanden: { $argument }.
error-arguments-next = Siehe lapwork --help.
error-no-command = Einen Befehl „{ $command }“ gibt es nicht.
error-no-command-next = Siehe lapwork --help.
error-no-path = Nach „{ $command }“ fehlt der Pfad.
error-no-path-next = Siehe lapwork --help.

shell-sound = { $count ->
    [one] In Ordnung: { $count } Eintrag.
   *[other] In Ordnung: { $count } Einträge.
}
shell-torn = { $count ->
    [one] Brauchbar: { $count } Eintrag ist in Ordnung; die letzte Zeile ist abgerissen und wird weggelassen.
   *[other] Brauchbar: { $count } Einträge sind in Ordnung; die letzte Zeile ist abgerissen und wird weggelassen.
}
shell-written = Geschrieben: { $file }
shell-taken-back = zurückgenommen
shell-help =
    Lapwork plant eine Decke aus überlappten Quadraten mit offenen Kanten und führt durch die Arbeit.
    { "" }
    lapwork                    öffnet das Fenster
    lapwork figures <Pfad>     gibt die Zahlen einer Decke als JSON aus
    lapwork history <Pfad>     gibt aus, was wann getan wurde (UTC), das Neueste zuerst
    lapwork check <Pfad>       sagt, ob die Datei einer Decke in Ordnung ist
    lapwork sheet <Pfad> --out <Datei>   schreibt das Arbeitsblatt als PDF
    lapwork draw <Pfad>        nennt die Zeichnungen, die es gibt; mit dem Namen einer gibt es sie als SVG aus
    lapwork table <Pfad>       nennt die Tabellen, die es gibt; mit dem Namen einer gibt es sie als CSV aus
    lapwork upgrade <Pfad>     bringt die Datei einer Decke auf diese Version; die von vorher bleibt daneben
    lapwork copies <Pfad>      die Kopien nennen, die beim Zusammenführen neben der Datei blieben
    lapwork merge <Pfad> <Pfad> --out <Pfad>
                               macht aus zwei Kopien einer Decke eine neue Datei
    lapwork demo <Pfad>        schreibt die Beispieldecke in eine neue Datei
    { "" }
    <Pfad> ist eine throw.jsonl oder der Ordner, in dem sie liegt.
    { "" }
    --metric                   Längen in Millimetern
    --ink                      Zeichnungen schwarz-weiß
    --card                     die Merkkarte statt des Arbeitsblatts
    --blank                    das leere Kursblatt statt des Arbeitsblatts
    --units inches|metric|both die Maße auf einem Blatt; beide, wenn nichts gesagt ist
    --paper a4|letter          letter, oder a4 mit --metric, wenn nichts gesagt ist
    --large                    das Blatt in großer Schrift
    --clear                    die genannten Kopien entfernen
    --keep first|second        beim Zusammenführen: welche Seite gilt, wo sie auseinandergehen
    --language <Kürzel>        in dieser Sprache (en, de), nicht in der des Systems
    --help, --version
    { "" }
    Endet mit 0, wenn alles gut ist, mit 1, wenn eine geprüfte Datei eine abgerissene letzte Zeile hat oder das Zusammenführen --keep braucht, mit 2, wenn es nicht geht.
    LAPWORK_DATA nennt den Ordner, in dem das Fenster die Decken aufhebt.

error-no-drawing = Eine Zeichnung „{ $which }“ gibt es von dieser Decke nicht.
error-no-drawing-next = Lass den Namen weg, um die vorhandenen zu sehen.
error-no-table = Eine Tabelle „{ $which }“ gibt es nicht.
error-no-table-next = Lass den Namen weg, um die vorhandenen zu sehen.

error-no-language = Eine Sprache „{ $language }“ gibt es hier nicht.
error-no-language-next = Nenne eine von diesen: { $languages }.

error-newer-there = { $file } hat ein neueres Lapwork geschrieben (Dateiversion { $version }; dieses liest die Versionen 1 und 2).
error-newer-there-next = Öffne sie mit jener Version; hier bleibt sie unberührt.
shell-left-out = { $file }: { $bytes ->
    [one] Das letzte Byte ist nicht zu lesen und bleibt weg.
   *[other] Die letzten { $bytes } Bytes sind nicht zu lesen und bleiben weg.
}
shell-no-copies = Es liegen keine Kopien daneben.
shell-copies = { $n ->
    [one] 1 Kopie liegt daneben ({ $size } kB). Mit --clear wird sie entfernt.
   *[other] { $n } Kopien liegen daneben ({ $size } kB). Mit --clear werden sie entfernt.
}
shell-copies-cleared = { $n ->
    [one] 1 Kopie wurde entfernt ({ $size } kB).
   *[other] { $n } Kopien wurden entfernt ({ $size } kB).
}
shell-upgraded = Auf den neuesten Stand gebracht. Die Datei von vorher: { $copy }
shell-conflict = Sie unterscheiden sich. Erste: { $first } | Zweite: { $second }
shell-decide = { $count ->
    [one] Nichts wurde geschrieben: An einer Stelle widersprechen sich die Kopien. Gib --keep first oder --keep second an.
   *[other] Nichts wurde geschrieben: An { $count } Stellen widersprechen sich die Kopien. Gib --keep first oder --keep second an.
}

error-broke = In Lapwork ist etwas schiefgegangen, darum wurde das nicht zu Ende gebracht.
error-broke-next = Alle Schritte davor sind gesichert und wurden neu aus ihren Dateien gelesen. Sieh nach, ob der letzte da ist; wenn nicht, mach ihn noch einmal. Der Fehler liegt bei Lapwork, nicht bei dir.
error-print = Die Seiten ließen sich nicht erstellen: { $why }.
error-print-next = Mach ohne das Blatt weiter; von der Decke ist nichts verloren. Der Fehler liegt bei Lapwork, nicht bei dir.
error-no-out = Der Name der Datei, die geschrieben werden soll, fehlt.
error-no-out-next = Füg --out und einen Namen an, etwa --out blatt.pdf.

error-torn = { $bytes ->
    [one] Das letzte Byte der Aufzeichnung dieser Decke war nicht zu lesen und ist weggelassen.
   *[other] Die letzten { $bytes } Bytes der Aufzeichnung dieser Decke waren nicht zu lesen und sind weggelassen.
} Das geschieht, wenn die App oder das Gerät mitten in einem Schritt anhält.
error-torn-next = { $count ->
    [one] { $count } Eintrag davor ist erhalten.
   *[other] Alle { $count } Einträge davor sind erhalten.
} Sieh nach, ob dein letztes Häkchen da ist. Die Datei von vorher liegt in { $copy }.
error-unsure = Der Datenträger versagte, während { $file } geschrieben wurde ({ $why }). { $seen ->
    [before] Dieser Schritt ist nicht gesichert; alles davor ist dort zu lesen.
    [after] Dort steht er als getan, aber der Datenträger hat nicht bestätigt, dass er gesichert ist.
   *[neither] Die Datei liest sich nicht mehr so, wie sie geschrieben wurde.
}
error-unsure-next = { $seen ->
    [before] Prüfe, ob der Datenträger funktioniert, und mach den Schritt noch einmal.
    [after] Prüfe, ob der Datenträger funktioniert, öffne Lapwork neu, und sieh nach, ob der Schritt da ist, bevor du ihn ein zweites Mal machst.
   *[neither] Lass Lapwork offen: Es kennt noch jeden Schritt, der vorher gesichert war. Prüfe, ob der Datenträger funktioniert, und sieh nach, ob dieser Schritt da ist, bevor du ihn ein zweites Mal machst.
}
error-held = Der Datenträger versagte, und { $file } ließ sich nicht neu schreiben; vorläufig kommt nichts dazu.
error-held-next = Du kannst dich umsehen; die Datei bleibt unberührt. Prüfe, ob der Datenträger funktioniert und Platz hat, und versuch es noch einmal.
shell-lies-at = Sie liegt in { $file }.

## Fotos
error-photo-large = { $file } ist größer als { $most } MB; mehr liest Lapwork nicht.
error-photo-large-next = Wähle ein kleineres Foto, oder sichere zuerst eine kleinere Kopie davon.
error-photo-pixels = Das Foto hat { $have } Millionen Bildpunkte; Lapwork liest bis zu { $most } Millionen.
error-photo-pixels-next = Wähle ein kleineres Foto, oder sichere zuerst eine kleinere Kopie davon.
error-photo-side = Das Foto ist auf einer Seite { $have } Bildpunkte lang; Lapwork liest bis zu { $most }.
error-photo-side-next = Wähle ein kleineres Foto, oder schneide es zuerst auf den Teil zu, den du zeigen willst.
error-photo-named = Das ist ein { $kind }-Foto, wie manche Handys sie aufnehmen; Lapwork kann { $kind } nicht lesen.
error-photo-named-next = Öffne es dort, wo du deine Fotos ansiehst, sichere oder teile es als JPEG, und wähle diese Datei. Oft lässt sich die Kamera auch auf JPEG stellen.
error-photo-kind = Das ist kein Foto, das Lapwork liest.
error-photo-kind-next = Wähle eine JPEG-, PNG- oder WebP-Datei.
error-photo-broken = Das Foto ist nicht zu lesen; seine Datei ist beschädigt oder abgeschnitten.
error-photo-broken-next = Wähle ein anderes, oder kopier es noch einmal von der Kamera.
error-photo-none = Es ist kein Foto gekommen.
error-photo-none-next = Wähle es noch einmal.
shell-photos = Fotos

## In a browser

error-no-storage = { $why ->
    [none] Diesem Browser fehlt der Speicher, in dem Lapwork Decken aufbewahrt; hier wird nichts behalten.
   *[other] Der Speicher dieses Browsers lässt sich nicht öffnen; hier wird nichts behalten: { $why }.
}
error-no-storage-next = Umsehen kannst du dich. Um eine Decke zu nähen, öffne diese Seite in einem neueren Browser und nicht in einem privaten Fenster.
