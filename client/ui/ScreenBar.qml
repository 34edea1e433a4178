pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// The way from screen to screen: a column beside the page, on a phone a row below it that
// can be drawn sideways.
ListView {
    id: root

    required property list<Screen> screens
    required property string chosen
    required property bool narrow
    signal wanted(key: string)

    function showChosen(): void {
        for (let i = 0; i < screens.length; ++i)
            if (screens[i].key === chosen)
                positionViewAtIndex(i, ListView.Contain)
    }

    implicitWidth: 104
    implicitHeight: 60
    orientation: narrow ? ListView.Horizontal : ListView.Vertical
    boundsBehavior: Flickable.StopAtBounds
    model: screens
    clip: true
    // On a phone not all fit: the chosen one is always in sight.
    onChosenChanged: showChosen()
    onWidthChanged: showChosen()
    onCountChanged: showChosen()
    Accessible.role: Accessible.PageTabList
    Accessible.name: qsTr("Screens")

    Rectangle {
        z: -1
        anchors.fill: parent
        color: Theme.sunken
    }
    delegate: T.AbstractButton {
        id: tab

        required property Screen modelData
        readonly property bool here: modelData.key === root.chosen

        objectName: "screen/" + modelData.key
        width: root.narrow ? Math.max(76, word.implicitWidth + Theme.small + Theme.tiny, root.width / root.count) : root.width
        height: root.narrow ? root.height : 64
        focusPolicy: Qt.StrongFocus
        onClicked: root.wanted(modelData.key)

        Accessible.role: Accessible.PageTab
        Accessible.name: modelData.askingCount > 0 ? qsTr("%1, %n waiting", "", modelData.askingCount).arg(modelData.name) : modelData.name
        Accessible.selected: here
        Keys.onReturnPressed: clicked()
        Keys.onEnterPressed: clicked()

        Column {
            anchors.centerIn: parent
            width: parent.width - Theme.small
            spacing: Theme.tiny

            Symbol {
                anchors.horizontalCenter: parent.horizontalCenter
                shape: tab.modelData.symbol
                color: Theme.ink
            }
            Text {
                id: word
                width: parent.width
                text: tab.modelData.name
                color: Theme.ink
                font { pixelSize: Theme.captionSize; bold: tab.here }
                horizontalAlignment: Text.AlignHCenter
                elide: Text.ElideRight
                textFormat: Text.PlainText
            }
        }
        Rectangle {
            visible: tab.modelData.askingCount > 0
            anchors { right: parent.right; top: parent.top; margins: Theme.tiny }
            width: Math.max(20, count.implicitWidth + Theme.small)
            height: 20
            radius: 10
            color: Theme.ink

            Text {
                id: count
                anchors.centerIn: parent
                text: tab.modelData.askingCount
                color: Theme.surface
                font { pixelSize: Theme.captionSize; bold: true }
            }
        }
        background: Rectangle {
            color: tab.here ? Theme.surface : tab.down ? Theme.accent : "transparent"
            border.width: tab.visualFocus ? 3 : 0
            border.color: Theme.focus

            Rectangle {
                visible: tab.here
                x: root.narrow ? 0 : parent.width - width
                width: root.narrow ? parent.width : 4
                height: root.narrow ? 4 : parent.height
                color: Theme.accentOutline
            }
        }
    }
}
