import QtQuick
import Suppertide.Ui
import Suppertide.Session

// What this device's person likes; it counts at once and on this device alone.
Card {
    id: root

    required property Preferences preferences
    readonly property list<string> languages: ["", "en", "de"]
    readonly property list<real> scales: [0.9, 1.0, 1.2, 1.5]

    SectionTitle {
        text: qsTr("On this device")
        topPadding: 0
    }
    PickEntry {
        objectName: "language"
        width: parent.width
        label: qsTr("Language")
        choices: [qsTr("As the desktop"), "English", "Deutsch"]
        chosen: root.languages.indexOf(root.preferences.language)
        onPicked: index => root.preferences.language = root.languages[index]
    }
    PickEntry {
        objectName: "degrees"
        width: parent.width
        label: qsTr("Temperatures")
        choices: [qsTr("As the household"), "°C", "°F"]
        chosen: root.preferences.degrees
        onPicked: index => root.preferences.degrees = index
    }
    PickEntry {
        objectName: "measures"
        width: parent.width
        label: qsTr("Measures")
        choices: [qsTr("As the household"), qsTr("Grams and litres"), qsTr("Cups and ounces")]
        chosen: root.preferences.measures
        onPicked: index => root.preferences.measures = index
    }
    PickEntry {
        objectName: "scheme"
        width: parent.width
        label: qsTr("Colours")
        choices: [qsTr("As the desktop"), qsTr("Light"), qsTr("Dark")]
        chosen: root.preferences.scheme
        onPicked: index => root.preferences.scheme = index
    }
    PickEntry {
        objectName: "textScale"
        width: parent.width
        label: qsTr("Text")
        choices: [qsTr("Small"), qsTr("Usual"), qsTr("Large"), qsTr("To read from afar")]
        chosen: {
            for (let i = 0; i < root.scales.length; ++i)
                if (Math.abs(root.scales[i] - root.preferences.textScale) < 0.01)
                    return i
            return -1
        }
        onPicked: index => root.preferences.textScale = root.scales[index]
    }
    SwitchEntry {
        objectName: "sound"
        width: parent.width
        text: qsTr("Reminders make a sound")
        on: root.preferences.sound
        onEdited: on => root.preferences.sound = on
    }
}
