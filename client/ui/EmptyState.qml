import QtQuick
import Suppertide.Ui

// Said where there is nothing to show yet: what is missing, and what to do about it.
Item {
    id: root

    required property string headline
    required property string advice
    property int symbol: Symbol.Cover
    // What can be done about it here; empty: nothing.
    property string action: ""
    property bool actionEnabled: true
    signal acted

    Accessible.role: Accessible.Pane
    Accessible.name: headline
    Accessible.description: advice

    Column {
        width: Math.min(parent.width - 2 * Theme.large, 440)
        anchors.centerIn: parent
        spacing: Theme.medium

        Symbol {
            width: 72
            height: 72
            shape: root.symbol
            color: Theme.accentOutline
            anchors.horizontalCenter: parent.horizontalCenter
        }
        Text {
            width: parent.width
            text: root.headline
            color: Theme.ink
            font.pixelSize: Theme.headlineSize
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.Wrap
        }
        Text {
            width: parent.width
            text: root.advice
            color: Theme.inkMuted
            font.pixelSize: Theme.bodySize
            lineHeight: 1.4
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.Wrap
        }
        ActionButton {
            objectName: "emptyAction"
            visible: root.action.length > 0
            enabled: root.actionEnabled
            text: root.action
            anchors.horizontalCenter: parent.horizontalCenter
            onClicked: root.acted()
        }
    }
}
