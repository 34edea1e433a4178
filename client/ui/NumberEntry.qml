import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// A number with its unit: typed, or stepped with large buttons, arrow keys included.
EntryFrame {
    id: root

    property real value: 0
    // False shows an empty field: no number is given.
    property bool present: true
    property real from: 0
    property real to: 1000000
    property real step: 1
    // At most so many are shown.
    property int decimals: 0
    property string unit
    property string example
    property bool steppers: true
    property bool readOnly: false
    readonly property bool unreadable: field.text.trim().length > 0 && isNaN(parse(field.text))
    signal edited(value: real)
    signal cleared()

    function take(): void {
        field.forceActiveFocus(Qt.TabFocusReason)
        field.selectAll()
    }
    function shown(number: real): string {
        const rounded = Number(number.toFixed(root.decimals))
        let digits = 0
        while (digits < root.decimals && Number(rounded.toFixed(digits)) !== rounded)
            ++digits
        return rounded.toLocaleString(Qt.locale(), "f", digits).split(Qt.locale().groupSeparator).join("")
    }
    function parse(text: string): real {
        const plain = text.trim().split(Qt.locale().decimalPoint).join(".").replace(",", ".")
        return plain.length > 0 && /^-?[0-9]*\.?[0-9]*$/.test(plain) ? Number(plain) : NaN
    }
    function show(): void {
        // What somebody is typing is never written over.
        if (!field.activeFocus)
            field.text = root.present ? root.shown(root.value) : ""
    }
    function by(amount: real): void {
        if (root.readOnly)
            return
        const next = Math.min(root.to, Math.max(root.from, (root.present ? root.value : 0) + amount))
        root.edited(Number(next.toFixed(6)))
        field.text = root.shown(next)
    }

    onValueChanged: show()
    onPresentChanged: show()
    Component.onCompleted: show()

    Row {
        width: parent.width
        spacing: Theme.tiny

        ActionButton {
            id: less
            objectName: "less"
            visible: root.steppers && !root.readOnly
            symbol: Symbol.Minus
            spoken: qsTr("%1: less").arg(root.label)
            focusPolicy: Qt.NoFocus
            autoRepeat: true
            enabled: root.value > root.from
            onClicked: root.by(-root.step)
        }
        T.TextField {
            id: field
            objectName: "field"
            width: parent.width - (less.visible ? 2 * (less.width + Theme.tiny) : 0)
            implicitHeight: Theme.target
            leftPadding: Theme.small + Theme.tiny
            rightPadding: unitText.implicitWidth + Theme.small + 2 * Theme.tiny
            verticalAlignment: TextInput.AlignVCenter
            horizontalAlignment: TextInput.AlignRight
            color: Theme.ink
            selectionColor: Theme.accent
            selectedTextColor: Theme.ink
            font.pixelSize: Theme.bodySize
            inputMethodHints: Qt.ImhFormattedNumbersOnly
            readOnly: root.readOnly
            selectByMouse: true
            activeFocusOnTab: true
            onTextEdited: {
                const number = root.parse(text)
                if (text.trim().length === 0)
                    root.cleared()
                else if (!isNaN(number))
                    root.edited(number)
            }
            onActiveFocusChanged: {
                if (activeFocus)
                    selectAll()
                else if (!root.unreadable)
                    root.show()
            }
            Keys.onUpPressed: root.by(root.step)
            Keys.onDownPressed: root.by(-root.step)

            Accessible.name: root.unit.length > 0 ? qsTr("%1 in %2").arg(root.label).arg(root.unit) : root.label
            Accessible.description: root.unreadable ? qsTr("Not a number") : root.spokenState

            background: EntryGround {
                focused: field.activeFocus
                wrong: root.problem.length > 0 || root.unreadable
            }
            Text {
                id: unitText
                anchors { right: parent.right; rightMargin: Theme.small; verticalCenter: parent.verticalCenter }
                text: root.unit
                color: Theme.inkMuted
                font.pixelSize: Theme.bodySize
                Accessible.ignored: true
            }
            Text {
                visible: field.text.length === 0
                anchors { fill: parent; leftMargin: field.leftPadding; rightMargin: field.rightPadding }
                text: root.example
                color: Theme.inkMuted
                font { pixelSize: Theme.bodySize; italic: true }
                horizontalAlignment: Text.AlignRight
                verticalAlignment: Text.AlignVCenter
                elide: Text.ElideRight
                Accessible.ignored: true
            }
        }
        ActionButton {
            objectName: "more"
            visible: less.visible
            symbol: Symbol.Plus
            spoken: qsTr("%1: more").arg(root.label)
            focusPolicy: Qt.NoFocus
            autoRepeat: true
            enabled: root.value < root.to
            onClicked: root.by(root.step)
        }
    }
}
