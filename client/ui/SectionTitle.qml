import QtQuick
import Suppertide.Ui

// Begins a part of a page.
Text {
    width: parent.width
    color: Theme.ink
    font { pixelSize: Theme.titleSize; bold: true }
    wrapMode: Text.Wrap
    textFormat: Text.PlainText
    topPadding: Theme.small

    Accessible.role: Accessible.Heading
    Accessible.name: text
}
