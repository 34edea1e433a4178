import QtQuick
import Suppertide.Ui

// One of two versions, and the button that takes it.
Column {
    id: root

    required property string title
    required property string words
    required property string button
    signal chosen()

    spacing: Theme.small

    Text {
        width: parent.width
        text: root.title
        color: Theme.inkMuted
        font { pixelSize: Theme.captionSize; bold: true }
        textFormat: Text.PlainText
    }
    Text {
        width: parent.width
        text: root.words.length > 0 ? root.words : qsTr("(nothing)")
        color: Theme.ink
        font.pixelSize: Theme.bodySize
        wrapMode: Text.Wrap
        maximumLineCount: 14
        elide: Text.ElideRight
        textFormat: Text.PlainText
    }
    ActionButton {
        objectName: "take"
        text: root.button
        spoken: qsTr("%1: %2").arg(root.title).arg(root.button)
        onClicked: root.chosen()
    }
}
