import QtQuick
import Suppertide.Ui

// Words that may run over several lines.
Text {
    color: Theme.ink
    font.pixelSize: Theme.bodySize
    lineHeight: 1.15
    wrapMode: Text.Wrap
    textFormat: Text.PlainText
    Accessible.role: Accessible.StaticText
    Accessible.name: text
}
