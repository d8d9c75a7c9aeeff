# Was die Schale sagt: Ärger mit Dateien, und die Befehlszeile.
# Anrede: du, in der Befehlsform; Beschriftungen in der Grundform.

error-disk = { $kind ->
    [full] Der Speicher ist voll; { $file } konnte nicht geschrieben werden.
    [forbidden] { $file } darf hier nicht gelesen oder geschrieben werden.
    [exists] { $file } gibt es schon und bleibt, wie es ist.
   *[other] { $file } konnte nicht gelesen oder geschrieben werden: { $why }.
}
error-disk-next = { $kind ->
    [full] Schaff Platz und versuch es noch einmal. Was vorher gesichert war, ist sicher.
    [forbidden] Erlaube Lapwork, in diesem Ordner zu lesen und zu schreiben, und versuch es noch einmal.
    [exists] Nimm einen anderen Namen oder verschieb das Vorhandene zuerst.
   *[other] Sieh nach, ob der Speicher da und in Ordnung ist, und versuch es noch einmal. Was vorher gesichert war, ist sicher.
}
error-locked = Lapwork ist zweimal offen, und nur eines darf in seinen Ordner schreiben.
error-locked-next = Hier kannst du dich umsehen. Zum Weiterarbeiten schließ das andere und versuch es noch einmal.
error-torn = Der letzte Schritt war erst halb geschrieben, als die App oder das Gerät anhielt; er ist weggelassen.
error-torn-next = Sieh nach, ob dein letztes Häkchen da ist. Die Datei von vorher liegt daneben als { $copy }.
error-torn-left = Der letzte Schritt ist erst halb geschrieben, und die Datei lässt sich gerade nicht richten.
error-torn-left-next = Hier kannst du dich umsehen. Schaff Platz oder schließ das andere Lapwork und öffne sie noch einmal, um weiterzuarbeiten.
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
error-no-screen-next = Starte Lapwork vom Schreibtisch aus, oder sieh mit lapwork --help, was es ohne Fenster kann.
error-no-home = Hier gibt es keinen eigenen Ordner, um Decken aufzuheben.
error-no-home-next = Nenne einen Ordner in LAPWORK_DATA und starte Lapwork noch einmal.
error-no-window = Das Fenster lässt sich nicht öffnen: { $why }.
error-no-window-next = Sieh nach, ob WebKitGTK 4.1 da ist, und starte Lapwork noch einmal.

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
    lapwork draw <Pfad>        nennt die Zeichnungen, die es gibt; mit dem Namen einer gibt es sie als SVG aus
    lapwork table <Pfad>       nennt die Tabellen, die es gibt; mit dem Namen einer gibt es sie als CSV aus
    lapwork demo <Pfad>        schreibt die Probedecke in eine neue Datei
    { "" }
    <Pfad> ist eine throw.jsonl oder der Ordner, in dem sie liegt.
    { "" }
    --metric                   Längen in Millimetern
    --ink                      Zeichnungen schwarz-weiß
    --language <Kürzel>        in dieser Sprache (en, de), nicht in der des Systems
    --help, --version
    { "" }
    Endet mit 0, wenn alles gut ist, mit 1, wenn eine geprüfte Datei eine abgerissene letzte Zeile hat, mit 2, wenn es nicht geht.
    LAPWORK_DATA nennt den Ordner, in dem das Fenster die Decken aufhebt.

error-no-drawing = Eine Zeichnung „{ $which }“ gibt es von dieser Decke nicht.
error-no-drawing-next = Lass den Namen weg, um die vorhandenen zu sehen.
error-no-table = Eine Tabelle „{ $which }“ gibt es nicht.
error-no-table-next = Lass den Namen weg, um die vorhandenen zu sehen.

error-no-language = Eine Sprache „{ $language }“ gibt es hier nicht.
error-no-language-next = Nenne eine von diesen: { $languages }.
