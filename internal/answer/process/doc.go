// Package process computes what happens between the stove and the bowl: how far
// the syrup boils and how long that takes, how hot the whites get when it is
// poured in and what published data say of that, where the custard sets and
// where it curdles, how it cools, how many dishes freeze it.
//
// Temperatures are °C, masses g, volumes mL, times minutes, heat J unless a name
// says otherwise. It returns figures and codes; package say puts them into
// words. It never says that a food may be eaten.
package process
