import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// A time of day, in minutes after midnight: typed as "18:30", "18.30" or "1830", or stepped.
EntryFrame {
    id: root

    property int minutes: 0
    property bool present: true
    property int step: 15
    property bool readOnly: false
    // 24:00 counts, as the end of a day.
    property bool endOfDay: false
    readonly property bool unreadable: field.text.trim().length > 0 && parse(field.text) < 0
    signal edited(minutes: int)
    signal cleared()

    function shown(): string {
        return String(Math.floor(root.minutes / 60)).padStart(2, "0") + ":" + String(root.minutes % 60).padStart(2, "0")
    }
    // -1: no time of day.
    function parse(text: string): int {
        const parts = /^\s*([0-9]{1,2})\s*[:.h]?\s*([0-9]{2})?\s*$/.exec(text)
        if (!parts)
            return -1
        const all = Number(parts[1]) * 60 + Number(parts[2] ?? 0)
        return Number(parts[2] ?? 0) < 60 && all <= (root.endOfDay ? 1440 : 1439) ? all : -1
    }
    function show(): void {
        if (!field.activeFocus)
            field.text = root.present ? root.shown() : ""
    }
    function by(amount: int): void {
        if (root.readOnly)
            return
        root.edited((root.minutes + amount + 1440) % 1440)
        field.text = root.shown()
    }

    onMinutesChanged: show()
    onPresentChanged: show()
    Component.onCompleted: show()

    Row {
        width: parent.width
        spacing: Theme.tiny

        ActionButton {
            id: less
            objectName: "less"
            visible: !root.readOnly
            symbol: Symbol.Minus
            spoken: qsTr("%1: earlier").arg(root.label)
            focusPolicy: Qt.NoFocus
            autoRepeat: true
            onClicked: root.by(-root.step)
        }
        T.TextField {
            id: field
            objectName: "field"
            width: parent.width - (less.visible ? 2 * (less.width + Theme.tiny) : 0)
            implicitHeight: Theme.target
            verticalAlignment: TextInput.AlignVCenter
            horizontalAlignment: TextInput.AlignHCenter
            color: Theme.ink
            selectionColor: Theme.accent
            selectedTextColor: Theme.ink
            font.pixelSize: Theme.bodySize
            inputMethodHints: Qt.ImhTime
            readOnly: root.readOnly
            selectByMouse: true
            activeFocusOnTab: true
            onTextEdited: {
                const minutes = root.parse(text)
                if (text.trim().length === 0)
                    root.cleared()
                else if (minutes >= 0)
                    root.edited(minutes)
            }
            onActiveFocusChanged: {
                if (activeFocus)
                    selectAll()
                else if (!root.unreadable)
                    root.show()
            }
            Keys.onUpPressed: root.by(root.step)
            Keys.onDownPressed: root.by(-root.step)

            Accessible.name: root.label
            Accessible.description: root.unreadable ? qsTr("Not a time of day") : root.spokenState

            background: EntryGround {
                focused: field.activeFocus
                wrong: root.problem.length > 0 || root.unreadable
            }
        }
        ActionButton {
            objectName: "more"
            visible: less.visible
            symbol: Symbol.Plus
            spoken: qsTr("%1: later").arg(root.label)
            focusPolicy: Qt.NoFocus
            autoRepeat: true
            onClicked: root.by(root.step)
        }
    }
}
