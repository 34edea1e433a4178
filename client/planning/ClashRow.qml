pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui

// One thing that cannot be had, with the wishes that collide.
Column {
    id: root

    required property string headline
    required property string wishes
    required property string rules
    required property bool isWishes

    spacing: Theme.tiny
    Accessible.role: Accessible.Paragraph
    Accessible.name: Array.of(headline, wishes, rules).filter(words => words.length > 0).join("\n")

    Text {
        width: root.width
        text: root.headline
        color: Theme.ink
        font { pixelSize: Theme.bodySize; bold: true }
        wrapMode: Text.Wrap
        textFormat: Text.PlainText
    }
    Repeater {
        model: root.wishes.length > 0 ? root.wishes.split("\n") : []
        delegate: Row {
            id: wish
            required property string modelData
            width: root.width
            spacing: Theme.small

            Rectangle {
                y: Theme.bodySize / 2
                width: 7
                height: 7
                color: Theme.late
                rotation: 45
            }
            Text {
                width: wish.width - 7 - Theme.small
                text: wish.modelData
                color: Theme.ink
                font.pixelSize: Theme.bodySize
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
        }
    }
    Text {
        visible: root.isWishes
        width: root.width
        text: qsTr("Leave out any one of them and the others can be had.")
        color: Theme.inkMuted
        font.pixelSize: Theme.captionSize
        wrapMode: Text.Wrap
    }
    Text {
        visible: root.rules.length > 0
        width: root.width
        text: root.rules
        color: Theme.ink
        font.pixelSize: Theme.bodySize
        wrapMode: Text.Wrap
        textFormat: Text.PlainText
    }
}
